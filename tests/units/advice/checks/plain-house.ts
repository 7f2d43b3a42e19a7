/** A house about which a check has next to nothing to say, for tests to change one thing of. */
import {
  checkScenario,
  type CheckFinding,
  type CheckReport,
  type ScenarioSpec,
} from '../../../../packages/sim/src/index.ts';
import { scenarioOf } from '../read-written.ts';

export type Unit = ScenarioSpec['units'][number];
export type Circuit = ScenarioSpec['circuits'][number];
type Strategy = ScenarioSpec['strategies'][number];

export function plainUnit(id: string, leg: 'L1' | 'L2' | 'both', more: Partial<Unit> = {}): Unit {
  return {
    id,
    leg,
    inverter: { continuousW: 3000, surgeW: 6000, idleW: 20, lossPerW: 0 },
    battery: { module: { capacityWh: 5000, maxChargeW: 5000, maxDischargeW: 7000 }, startFraction: 1 },
    ...more,
  };
}

export function plainCircuit(id: string, leg: Circuit['leg'], more: Partial<Circuit> = {}): Circuit {
  return { id, leg, tier: 2, appliances: [always(50)], ...more };
}

type Appliance = Circuit['appliances'][number];

/** Day and night, the same every day. */
export const always = (runningW: number): Appliance => ({ kind: 'steady', runningW, dayScatterFraction: 0 });

/** On from noon to one, every day. */
export const atNoon = (runningW: number, more: object = {}) =>
  ({ kind: 'scheduled', runningW, windows: ['12:00-13:00'], ...more }) as Appliance;

export interface PlainHouse {
  readonly units?: readonly Unit[];
  readonly circuits?: readonly Circuit[];
  readonly strategies?: readonly Strategy[];
  readonly person?: ScenarioSpec['person'];
  readonly site?: Partial<ScenarioSpec['site']>;
  readonly dryBulbC?: number;
  readonly sources?: ScenarioSpec['sources'];
}

/** One fixed day on the equator: midnight to midnight. */
export function plainSpec(house: PlainHouse): ScenarioSpec {
  const twelve = (value: number) => new Array<number>(12).fill(value);
  return {
    rideout: 1,
    title: 'a plain house',
    site: { latitudeDeg: 0, longitudeDeg: 0, timeZone: 'UTC', ...house.site },
    weather: {
      monthly: {
        clearnessMean: twelve(0.5),
        dryBulbMeanC: twelve(house.dryBulbC ?? 20),
        dryBulbDailyRangeC: twelve(0),
        dryBulbSdC: twelve(0.1),
      },
    },
    outage: { startLocal: '2026-03-01T00:00', horizonDays: 1 },
    units: [...(house.units ?? [plainUnit('east', 'L1'), plainUnit('west', 'L2')])],
    circuits: withFirstTier(
      house.circuits ?? [plainCircuit('hall', 'L1'), plainCircuit('attic', 'L2', { tier: 1 })],
    ),
    usage: { householdScatterFraction: 0 },
    person: house.person ?? {},
    strategies: [...(house.strategies ?? [{ id: 'all', title: 'Everything on' }])],
    sources: house.sources,
  };
}

/** Days end by a circuit of tier 1: where there is none, one more that wants nothing. */
function withFirstTier(circuits: readonly Circuit[]): Circuit[] {
  if (circuits.some(({ tier }) => tier === 1)) return [...circuits];
  const nothing = plainCircuit('nothing', 'L1', { tier: 1, appliances: [always(0)] });
  return [...circuits, nothing];
}

export function reportOf(house: PlainHouse, draws = 1): CheckReport {
  return checkScenario(scenarioOf(plainSpec(house)), { seed: 'plain', draws, days: 1 });
}

/** What one subject found. */
export function findingsOf(house: PlainHouse, check: string): readonly CheckFinding[] {
  const report = reportOf(house);
  if (!report.subjects.some((s) => s.id === check)) throw new Error(`no subject ${check}`);
  return report.findings.filter((f) => f.check === check);
}

export function onlyFinding(house: PlainHouse, check: string): CheckFinding {
  const findings = findingsOf(house, check);
  if (findings.length !== 1)
    throw new Error(`${findings.length} findings: ${findings.map((f) => f.found).join(' | ')}`);
  return findings[0]!;
}

export function numberOf(finding: CheckFinding, what: string): number {
  const number = finding.numbers.find((n) => n.what === what);
  if (number === undefined)
    throw new Error(`no “${what}” among ${finding.numbers.map((n) => n.what).join(', ')}`);
  return number.value;
}
