/** What is lost on the way from the units to the farthest outlets. */
import { voltageDropV } from '../../power/voltage-drop.ts';
import { LEG_V } from '../../power/nominal-volts.ts';
import type { Circuit } from '../../scenario/scenario.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { listed } from '../../trials/listed.ts';
import { inA, inAwg, inPercent, inRun, inV } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';
import { circuitV, shareOf, startExtraW } from './household-loads.ts';

const CIRCUIT_FRACTION = 0.03;
const TOTAL_FRACTION = 0.05;

export const voltageDrops: CheckSubjectSpec = {
  id: 'voltage-drops',
  title: 'Voltage lost along cords and wires',
  look: (context) => {
    const { circuits, units } = context.household;
    const untold = circuits.filter((c) => c.wireAwg === undefined || c.runM === undefined).map((c) => c.id);
    return joinOutcomes([
      ...units.map((unit) => lookAtUnit(unit)),
      ...circuits.map((circuit, c) => lookAtCircuit(context, circuit, c)),
      untold.length === 0
        ? {}
        : unknown(
            'circuits',
            `wire or its length not given for ${listed(untold)}`,
            'circuits.*.wireAwg',
            'circuits.*.runM',
          ),
    ]);
  },
};

/** Volts lost in a unit's cord and wire at `amps`; undefined when neither is told in full. */
function feederDropV({ wiring }: UnitSpec, amps: number): number | undefined {
  const { cordAwg, cordRunM, wireAwg, runM } = wiring ?? {};
  const cord =
    cordAwg === undefined || cordRunM === undefined ? undefined : voltageDropV(amps, cordRunM, cordAwg);
  const wire = wireAwg === undefined || runM === undefined ? undefined : voltageDropV(amps, runM, wireAwg);
  return cord === undefined && wire === undefined ? undefined : (cord ?? 0) + (wire ?? 0);
}

function lookAtUnit(unit: UnitSpec): Partial<CheckOutcome> {
  const amps = unit.inverter.continuousW / LEG_V;
  const drop = feederDropV(unit, amps);
  const where = `units.${unit.id}.wiring`;
  if (drop === undefined)
    return unknown(
      where,
      'no size and length given for the cord or wire of a unit',
      ...['cordAwg', 'cordRunM', 'wireAwg', 'runM'].map((key) => `${where}.${key}`),
    );
  const lost = drop / LEG_V;
  if (lost <= CIRCUIT_FRACTION) return looked();
  return looked({
    severity: lost > TOTAL_FRACTION ? 'watch' : 'note',
    where,
    found: `At its full ${inA(amps)}, ${unit.id} loses ${inV(drop)} (${inPercent(lost)}) before the panel.`,
    numbers: [
      { what: 'lost at full output', value: drop, unit: 'V' },
      { what: 'share of 120 V', value: lost * 100, unit: '%' },
      { what: 'output', value: amps, unit: 'A' },
    ],
    todo: 'A shorter cord or a larger size brings it down; motors suffer first.',
    rule: CHECK_RULES.voltageDrop,
  });
}

/** At the worst minute watched: there and back in the circuit's wire, and on the way from the units. */
function lookAtCircuit(
  { observed, household }: CheckContext,
  circuit: Circuit,
  c: number,
): Partial<CheckOutcome> {
  const { wireAwg, runM } = circuit;
  if (wireAwg === undefined || runM === undefined) return {};
  const volts = circuitV(circuit);
  const amps = observed.circuits[c]!.worstMinute.watts / volts;
  const startA = amps + startExtraW(circuit) / volts;
  const drop = voltageDropV(amps, runM, wireAwg);
  const feeders = household.units
    .filter((unit) => shareOf(unit, circuit, household.units) > 0)
    .map((unit) => feederDropV(unit, unit.inverter.continuousW / LEG_V) ?? 0);
  const own = drop / volts;
  const before = Math.max(0, ...feeders) / LEG_V;
  const total = own + before;
  // What is lost on the way from the unit is told there, not again for every circuit behind it.
  if (own <= CIRCUIT_FRACTION && (total <= TOTAL_FRACTION || before > CIRCUIT_FRACTION)) return looked();
  const name = circuit.title ?? circuit.id;
  return looked({
    severity: total > TOTAL_FRACTION ? 'watch' : 'note',
    where: `circuits.${circuit.id}.runM`,
    found: `${name}: ${inA(amps)} over ${inRun(runM)} of ${inAwg(wireAwg)} lose ${inV(drop)} (${inPercent(own)}); with the way from the unit at full output ${inPercent(total)}.`,
    numbers: [
      { what: 'worst minute watched', value: amps, unit: 'A' },
      { what: 'lost in the circuit', value: drop, unit: 'V' },
      { what: 'share of its voltage', value: own * 100, unit: '%' },
      { what: 'with the way from the unit', value: total * 100, unit: '%' },
      { what: 'lost for seconds at a start', value: voltageDropV(startA, runM, wireAwg), unit: 'V' },
    ],
    todo: 'A larger wire or a nearer outlet; measure the voltage at the far end under load.',
    rule: CHECK_RULES.voltageDrop,
  });
}
