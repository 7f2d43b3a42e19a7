/** A sound scenario as a person writes it, for tests to spoil a line of. */
import {
  isScenarioError,
  readScenario,
  type Finding,
  type ReadScenario,
  type TypicalAppliances,
} from '../../../packages/sim/src/index.ts';

export const TYPICAL: TypicalAppliances = new Map([
  ['lamp', { kind: 'steady', runningW: 9 }],
  ['kettle', { kind: 'events', runningW: 1500, usesPerDay: 4, minutesPerUse: 3 }],
  ['refrigerator', { kind: 'duty-cycled', runningW: 120, onMinutes: 15, dutyFraction: 0.35 }],
]);

export const HOUSE = `# a small house
rideout: 1
title: A small house
site:
  latitudeDeg: 42
  longitudeDeg: -71
  timeZone: America/New_York
weather:
  normals: boston
outage:
  months: [1]
  horizonDays: 7
units:
  - id: east
    leg: L1
    inverter: &inverter
      continuousW: 3000
      surgeW: 6000
      idleW: 25
    battery:
      module: { capacityWh: 3000, maxChargeW: 1500, maxDischargeW: 3000 }
      startFraction: 0.9
  - id: west
    leg: L2
    inverter: *inverter
    battery:
      module: { capacityWh: 3000, maxChargeW: 1500, maxDischargeW: 3000 }
circuits:
  - { id: kitchen, leg: L1, tier: 1, appliances: [{ typical: refrigerator }] }
  - id: hall
    leg: L2
    tier: 2
    appliances:
      - { typical: lamp, count: 3 }
      - kind: steady
        runningW: 12
  - { id: pump, leg: both, tier: 3, appliances: [{ typical: kettle }] }
strategies:
  - id: everything
    title: Everything
  - id: careful
    title: Careful
    rules:
      - { by: charge, circuits: { tiers: [3] }, dropBelowFraction: 0.5, restoreAboveFraction: 0.7 }
      - { by: sleep, unit: west, during: ['23:00-05:00'] }
alternatives:
  - id: as-it-is
    title: As it is
  - id: more
    title: More
    change: { 'units.*.battery.modules': 2 }
`;

/** The line, counted from 1, on which `part` stands. */
export function lineWith(part: string, text = HOUSE): number {
  const line = text.split('\n').findIndex((l) => l.includes(part)) + 1;
  if (line === 0) throw new Error(`no line with ${part}`);
  return line;
}

export function spoilt(part: string, by: string): string {
  if (!HOUSE.includes(part)) throw new Error(`nothing to spoil: ${part}`);
  return HOUSE.replace(part, by);
}

export function read(text: string, file = 'house.yaml'): ReadScenario {
  return readScenario(text, file, TYPICAL);
}

/** What is wrong with the text; fails when nothing is. */
export function findingsOf(text: string, file = 'house.yaml'): readonly Finding[] {
  try {
    read(text, file);
  } catch (error) {
    if (isScenarioError(error)) return error.findings;
    throw error;
  }
  throw new Error('the text was accepted');
}

export function onlyFinding(text: string, file?: string): Finding {
  const findings = findingsOf(text, file);
  if (findings.length !== 1)
    throw new Error(`${findings.length} findings: ${findings.map((f) => `${f.path} ${f.found}`).join('; ')}`);
  return findings[0]!;
}
