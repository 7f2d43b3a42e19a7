/** The scenario schema for editors, as JSON Schema (draft 2020-12). */
import { z } from 'zod';
import { scenarioSchema } from './schema.ts';

/** The few words of JSON Schema that are read back here. */
export interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly const?: unknown;
}

/** The JSON Schema of a scenario file, for editors. */
export function scenarioJsonSchema(): JsonSchema {
  const schema = z.toJSONSchema(scenarioSchema, { io: 'input', reused: 'inline' });
  return { title: 'Rideout scenario', ...schema } as JsonSchema;
}
