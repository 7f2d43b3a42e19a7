/** Which keys the schema knows at a place, for "did you mean". Read off the JSON Schema, so that it cannot drift. */
import { scenarioJsonSchema, type JsonSchema } from './json-schema.ts';
import type { Path } from './located-document.ts';

/** Keys allowed in the block at `path`, whose present value tells which of several shapes it is. */
export function knownKeys(path: Path, value: unknown): string[] {
  const schemas = path.reduce<JsonSchema[]>(
    (at, step) => at.flatMap((s) => below(s, step)),
    [scenarioJsonSchema()],
  );
  const shapes = schemas.flatMap(shapesOf);
  const fitting = shapes.filter((shape) => fits(shape, value));
  return [
    ...new Set(
      (fitting.length > 0 ? fitting : shapes).flatMap((shape) => Object.keys(shape.properties ?? {})),
    ),
  ];
}

function shapesOf(schema: JsonSchema): JsonSchema[] {
  const inner = [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])];
  return inner.length === 0 ? [schema] : inner.flatMap(shapesOf);
}

function below(schema: JsonSchema, step: string | number): JsonSchema[] {
  return shapesOf(schema).flatMap((shape) => {
    const next = typeof step === 'number' ? shape.items : shape.properties?.[step];
    return next === undefined ? [] : [next];
  });
}

/** A shape fits when every word it fixes (`kind: events`) is the value's. */
function fits(shape: JsonSchema, value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(shape.properties ?? {}).every(
    ([key, { const: fixed }]) => fixed === undefined || (value as Record<string, unknown>)[key] === fixed,
  );
}
