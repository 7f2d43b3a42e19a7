/** Outages that had no say in a choice: what is chosen for looking best does not look so well again. */
export function freshSeed(seed: string): string {
  return `${seed}/fresh`;
}
