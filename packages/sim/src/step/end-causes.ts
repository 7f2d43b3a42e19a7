/** Why tier 1 went without, or a unit stopped. Rows hold the position in this list. */
export const END_CAUSES = [
  'still running',
  'battery empty',
  'overload trip',
  'starting surge trip',
  'battery limit trip',
  'switched off',
  'partner stopped',
  'battery too cold',
  'source without 240 V',
] as const;
/** Why a runtime ended. */
export type EndCause = (typeof END_CAUSES)[number];

export function causeIndex(cause: EndCause): number {
  return END_CAUSES.indexOf(cause);
}
