/** What the keys of needs cannot tell alone. */
import type { Report } from './cross-check-report.ts';
import type { Path } from './located-document.ts';
import { meantHint } from './nearest.ts';
import { circuitsServing, keeps } from './needs-of.ts';
import type { CheckedScenario } from './schema.ts';
import type { NeedSpec } from './schema-needs.ts';

type WithCircuits = Pick<CheckedScenario, 'circuits'>;

/** Reports through the caller's `report` in the manner of `crossCheck`. @param scenario needs that cannot be read are undefined */
export function checkNeeds(
  scenario: WithCircuits & { readonly needs?: readonly (NeedSpec | undefined)[] | undefined },
  report: Report,
): void {
  const { needs = [], circuits } = scenario;
  const ids = circuits.map((c) => c.id);
  const seen = new Set<string>();
  needs.forEach((need, n) => {
    if (need === undefined) return;
    const path = ['needs', n];
    if (seen.has(need.id)) report([...path, 'id'], 'an id used once only among the needs');
    seen.add(need.id);
    const named = [...(need.circuits ?? []), ...('room' in need ? sourcesOf(need) : [])];
    const unknown = named.filter((id) => !ids.includes(id));
    for (const id of unknown)
      report([...path, 'circuits'], 'the id of a circuit', meantHint(id, ids), JSON.stringify(id));
    if (unknown.length === 0) checkMeasure(scenario, need, path, report);
  });
}

const sourcesOf = ({ room }: Extract<NeedSpec, { room?: unknown }>): string[] =>
  room?.sources.map((s) => s.circuit) ?? [];

function checkMeasure({ circuits }: WithCircuits, need: NeedSpec, path: Path, report: Report): void {
  const ids = circuitsServing(need, circuits);
  const serving = circuits.filter((c) => ids.includes(c.id));
  const found = serving.length === 0 ? 'no circuit' : serving.map((c) => c.id).join(', ');
  const hint = 'Name them under circuits, or give them this id as their need.';
  switch (need.measure) {
    case 'power':
      if (serving.length === 0) report(path, 'a need that some circuit serves', hint, found);
      break;
    case 'cold':
      if (!serving.some((c) => keeps(c, 'cools')))
        report(path, 'a circuit with a refrigerator or freezer, a thermostat that cools', hint, found);
      break;
    case 'water':
      if (serving.length === 0 && need.storedLitres === 0)
        report(path, 'a pump’s circuit, or storedLitres above 0', hint, found);
      break;
    case 'warmth':
    case 'coolth':
      checkRoom(circuits, need, serving, [...path, 'room'], report);
  }
}

/** A room is carried by thermostats, or described, or left to itself; a heater that is neither needs a description. */
function checkRoom(
  circuits: CheckedScenario['circuits'],
  need: Extract<NeedSpec, { room?: unknown }>,
  serving: CheckedScenario['circuits'],
  path: Path,
  report: Report,
): void {
  const does = need.measure === 'warmth' ? 'heats' : 'cools';
  if (need.room === undefined) {
    if (serving.length > 0 && !serving.some((c) => keeps(c, does)))
      report(
        path,
        `heatLossWPerC, timeConstantHours and sources: nothing on these circuits is a thermostat that ${does}`,
        undefined,
        serving.map((c) => c.id).join(', '),
      );
    return;
  }
  need.room.sources.forEach(({ circuit, heatW }, s) => {
    if (heatW !== undefined && !circuits.some((c) => c.id === circuit && keeps(c, does)))
      report(
        [...path, 'sources', s],
        `heatPerW: heatW is for a thermostat that ${does}`,
        undefined,
        `heatW with ${circuit}`,
      );
  });
}
