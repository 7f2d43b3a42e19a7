/** What one key cannot tell alone: names that must exist, parts that must fit each other. */
import { isKnownZone } from '../clock/zone-offset.ts';
import { chosenCircuits } from '../shedding/compile-rules.ts';
import { applianceFaults } from '../usage/appliance-faults.ts';
import type { Report } from './cross-check-report.ts';
import type { Finding } from './findings.ts';
import type { FittingParts, PartKey } from './fitting-parts.ts';
import type { LocatedDocument, Path } from './located-document.ts';
import { meantHint } from './nearest.ts';
import type { CheckedScenario } from './schema.ts';
import { spellPath, spellValue, valueAt } from './schema-findings.ts';
import { checkNeeds } from './needs-checks.ts';
import { checkSources } from './sources-checks.ts';
import { checkNeutrals, checkRecords } from './wiring-checks.ts';

/** Id of the household as it stands in the file. */
export const AS_DESCRIBED = 'as-described';

type Look<Key extends PartKey> = (parts: Pick<CheckedScenario, Key>, report: Report) => void;

interface Check {
  /** What it reads: it is made where all of that fits the schema. */
  readonly reads: readonly PartKey[];
  /** Of these lists it reads each item for itself. */
  readonly readsSome: readonly PartKey[];
  readonly look: (scenario: CheckedScenario, report: Report) => void;
}

function reading<Key extends PartKey>(
  reads: readonly Key[],
  look: Look<Key>,
  readsSome: readonly Key[] = [],
): Check {
  return { reads: reads.filter((key) => !readsSome.includes(key)), readsSome, look };
}

const CHECKS: readonly Check[] = [
  ...(['units', 'circuits', 'strategies', 'alternatives'] as const).map((list) =>
    reading([list], (parts, report) => checkIds(parts[list], list, report)),
  ),
  reading(['alternatives'], checkAlternatives),
  reading(['site'], checkZone),
  reading(['outage'], checkStart),
  reading(['units'], checkUnits),
  reading(['circuits', 'units'], checkCircuits),
  reading(['strategies', 'circuits', 'units'], checkRules, ['strategies']),
  reading(['site'], checkRecords),
  reading(['circuits'], checkNeutrals),
  reading(['sources', 'units', 'person', 'strategies', 'alternatives', 'ladder'], checkSources),
  reading(['needs', 'circuits'], checkNeeds, ['needs']),
];

/** Every finding in the parts of a scenario that fit the schema. @param at path of the alternative it belongs to, if any */
export function crossCheck(
  { parts, whole, some }: FittingParts,
  document: LocatedDocument,
  at: Path = [],
): Finding[] {
  const findings: Finding[] = [];
  const report: Report = (path, expected, hint, found = spellValue(valueAt(parts, path))) => {
    const where = at.length === 0 ? path : at;
    findings.push({
      file: document.file,
      line: document.lineOf(where),
      path: spellPath(parts, path),
      found,
      expected,
      hint,
    });
  };
  for (const { reads, readsSome, look } of CHECKS) {
    const isThere =
      reads.every((key) => whole.has(key)) && readsSome.every((key) => whole.has(key) || some.has(key));
    if (isThere) look(parts, report);
  }
  return findings;
}

function checkIds(items: readonly { readonly id: string }[], list: PartKey, report: Report): void {
  const seen = new Set<string>();
  items.forEach(({ id }, i) => {
    if (seen.has(id)) report([list, i, 'id'], `an id used once only among the ${list}`);
    seen.add(id);
  });
}

/** The household without changes comes first of its own accord, under this id, unless an alternative says as much. */
function checkAlternatives({ alternatives }: Pick<CheckedScenario, 'alternatives'>, report: Report): void {
  if (alternatives.some((a) => Object.keys(a.change).length === 0)) return;
  alternatives.forEach(({ id }, i) => {
    if (id === AS_DESCRIBED)
      report(['alternatives', i, 'id'], `another id: ${AS_DESCRIBED} is the household without changes`);
  });
}

function checkZone({ site }: Pick<CheckedScenario, 'site'>, report: Report): void {
  if (!isKnownZone(site.timeZone)) report(['site', 'timeZone'], 'an IANA time zone such as America/New_York');
}

function checkStart({ outage }: Pick<CheckedScenario, 'outage'>, report: Report): void {
  if (outage.startLocal !== undefined) {
    const asUtc = new Date(`${outage.startLocal}:00Z`);
    const year = Number(outage.startLocal.slice(0, 4));
    if (Number.isNaN(asUtc.getTime()) || !asUtc.toISOString().startsWith(outage.startLocal))
      report(['outage', 'startLocal'], 'a date that exists');
    else if (year < 1950 || year > 2100) report(['outage', 'startLocal'], 'a year from 1950 to 2100');
  }
}

function checkUnits({ units }: Pick<CheckedScenario, 'units'>, report: Report): void {
  if (units.length === 2) checkPairLegs(units, report);
  units.forEach(({ inverter, battery }, u) => {
    if (inverter.surgeW < inverter.continuousW)
      report(['units', u, 'inverter', 'surgeW'], `at least continuousW, ${inverter.continuousW}`);
    const lowestStart = battery.startFraction === undefined ? 'reserveFraction' : 'startFraction';
    if (battery[lowestStart]! < battery.cutOffFraction)
      report(['units', u, 'battery', lowestStart], `at least cutOffFraction, ${battery.cutOffFraction}`);
  });
}

function checkPairLegs(units: CheckedScenario['units'], report: Report): void {
  const joining = units.flatMap(({ leg }, u) => (leg === 'both' ? u : []));
  for (const u of joining)
    report(['units', u, 'leg'], 'L1 or L2: each unit of a pair feeds its own; both is for a unit alone');
  if (joining.length === 0 && units[0]!.leg === units[1]!.leg)
    report(['units', 1, 'leg'], 'the other leg: each unit of a pair feeds its own');
}

/** A unit alone on both legs stands in for the grid at the panel: 240 V circuits may be there, and get nothing. */
function checkCircuits(
  { circuits, units }: Pick<CheckedScenario, 'circuits' | 'units'>,
  report: Report,
): void {
  checkFirstTier(circuits, report);
  const legs: readonly string[] = units.some((u) => u.leg === 'both')
    ? ['L1', 'L2', 'both']
    : [...new Set(units.map((u) => u.leg))];
  circuits.forEach(({ leg, appliances }, c) => {
    if (leg !== 'both' && !legs.includes(leg))
      report(['circuits', c, 'leg'], `a leg that a unit feeds: ${legs.join(' or ')}`);
    if (leg === 'both' && units.length < 2 && !legs.includes(leg))
      report(['circuits', c, 'leg'], `${legs.join()}: one unit makes no 240 V`);
    const seen = new Set<string>();
    appliances.forEach((appliance, a) => {
      if ('typical' in appliance) return;
      const { id } = appliance;
      if (id !== undefined && seen.has(id))
        report(
          ['circuits', c, 'appliances', a],
          'an id of its own, or one entry with count',
          undefined,
          `a second ${id}`,
        );
      if (id !== undefined) seen.add(id);
      for (const fault of applianceFaults(appliance)) {
        report(
          ['circuits', c, 'appliances', a],
          'one that a house can have',
          undefined,
          `an appliance that cannot be (${fault})`,
        );
      }
    });
  });
}

/** Without one nothing could end the days: every run would last to the horizon. */
function checkFirstTier(circuits: CheckedScenario['circuits'], report: Report): void {
  if (circuits.some(({ tier }) => tier === 1)) return;
  const tiers = [...new Set(circuits.map(({ tier }) => tier))].sort((a, b) => a - b);
  report(
    ['circuits'],
    'at least one circuit of tier 1: the days end when one of them goes without',
    undefined,
    `${tiers.length === 1 ? 'tier' : 'tiers'} ${tiers.join(', ')} only`,
  );
}

interface WithSomeStrategies {
  readonly strategies: readonly (CheckedScenario['strategies'][number] | undefined)[];
}

function checkRules(
  { strategies, circuits, units }: Pick<CheckedScenario, 'circuits' | 'units'> & WithSomeStrategies,
  report: Report,
): void {
  const circuitIds = circuits.map((c) => c.id);
  strategies.forEach((strategy, s) => {
    strategy?.rules.forEach((rule, r) => {
      const path = ['strategies', s, 'rules', r] as const;
      if (rule.by === 'sleep') {
        const unitIds = units.map((u) => u.id);
        if (!unitIds.includes(rule.unit))
          report([...path, 'unit'], 'the id of a unit', meantHint(rule.unit, unitIds));
        if (units.length < 2)
          report([...path, 'unit'], 'a pair of units: one of them keeps watch while the other sleeps');
        return;
      }
      const unknown = (rule.circuits.ids ?? []).filter((id) => !circuitIds.includes(id));
      for (const id of unknown)
        report(
          [...path, 'circuits', 'ids'],
          'the id of a circuit',
          meantHint(id, circuitIds),
          JSON.stringify(id),
        );
      if (unknown.length === 0 && !chosenCircuits(rule.circuits, circuits).includes(1)) {
        report(
          [...path, 'circuits'],
          'a choice that some circuit matches',
          'A circuit must match every part given.',
          'a choice that no circuit matches',
        );
      }
    });
  });
}
