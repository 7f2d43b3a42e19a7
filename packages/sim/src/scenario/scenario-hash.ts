import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Scenario } from './scenario.ts';

/** Keys in order, so that the same content has the same text. */
function canonical(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(canonical);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).filter(([, part]) => part !== undefined);
  return Object.fromEntries(
    entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, part]) => [key, canonical(part)]),
  );
}

/** First 12 hex digits of the SHA-256 of the resolved scenario: names a scenario in every published figure. */
export function scenarioHash(scenario: Scenario): string {
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify(canonical(scenario))))).slice(0, 12);
}
