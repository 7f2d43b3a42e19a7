/** What the schema of a scenario says about one part of it: its usual value, its bounds, its description. */
import { scenarioJsonSchema, valueAt } from '@rideout/sim';

/** Where a part stands in the scenario as written. */
export type Path = readonly (string | number)[];

/** The words of JSON Schema that the form reads. */
export interface PartSchema {
  readonly default?: unknown;
  readonly description?: string;
  readonly const?: unknown;
  readonly type?: string;
  readonly properties?: Readonly<Record<string, PartSchema>>;
  readonly items?: PartSchema;
  readonly anyOf?: readonly PartSchema[];
  readonly oneOf?: readonly PartSchema[];
}

export function wholeSchema(): PartSchema {
  return scenarioJsonSchema();
}

/** The schema of the part at `path`; empty when there is none. */
export function schemaAt(schema: PartSchema, value: unknown, path: Path): PartSchema {
  const [step, ...rest] = path;
  const here = branchFor(schema, value);
  if (step === undefined) return here;
  const next = typeof step === 'number' ? here.items : here.properties?.[step];
  return next ? schemaAt(next, valueAt(value, [step]), rest) : {};
}

/** A copy without the keys whose value is the usual one: what a person would have written. */
export function withoutDefaults(value: unknown, schema: PartSchema): unknown {
  const here = branchFor(schema, value);
  if (Array.isArray(value)) return value.map((item) => withoutDefaults(item, here.items ?? {}));
  if (typeof value !== 'object' || value === null) return value;
  const kept: [string, unknown][] = [];
  for (const [key, part] of Object.entries(value)) {
    const said = here.properties?.[key] ?? {};
    const written = withoutDefaults(part, said);
    if (part !== undefined && !sameValue(written, said.default) && !sameValue(part, said.default))
      kept.push([key, written]);
  }
  return Object.fromEntries(kept);
}

/**
 * Whether blocks, lists and words stand where the schema has blocks, lists and words. What is missing, and figures that
 * cannot be, are faults of a household that is still being described.
 */
export function hasShapeOf(value: unknown, schema: PartSchema): boolean {
  const { properties = {}, items, type } = branchFor(schema, value);
  const isBlock = typeof value === 'object' && value !== null && !Array.isArray(value);
  const said = (key: string) => (Object.hasOwn(properties, key) ? properties[key]! : {});
  if (type === undefined) return true; // nothing is said of it
  if (type === 'object')
    return isBlock && Object.entries(value).every(([key, part]) => hasShapeOf(part, said(key)));
  if (type === 'array') return Array.isArray(value) && value.every((item) => hasShapeOf(item, items || {}));
  return type === 'string' ? typeof value === 'string' : !isBlock && !Array.isArray(value);
}

/** Values of a file, compared as they would be written. */
export function sameValue(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** Of a choice between shapes, the one whose fixed words the value has. */
function branchFor(schema: PartSchema, value: unknown): PartSchema {
  const branches = schema.anyOf ?? schema.oneOf;
  if (!branches) return schema;
  const fits = branches
    .map((branch) => branchFor(branch, value))
    .filter((branch) =>
      Object.entries(branch.properties ?? {}).every(
        ([key, part]) => part.const === undefined || part.const === valueAt(value, [key]),
      ),
    );
  const hasKey = (branch: PartSchema) =>
    Object.values(branch.properties ?? {}).some((part) => part.const !== undefined);
  return fits.find(hasKey) ?? fits[0] ?? {};
}
