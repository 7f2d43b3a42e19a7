/** Strings of panels against the input's window: open circuit in the cold, working voltage in the heat. */
import { faimanCellC } from '../../power/cell-temperature.ts';
import { coldStringV, coldVoltageFactor, stringV } from '../../power/string-voltage.ts';
import type { ArraySpec, UnitSpec } from '../../scenario/schema.ts';
import { inC, inV } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

/** NEC 690.7: photovoltaic circuits on one- and two-family houses, V. */
const HOUSE_LIMIT_V = 600;
/** Full sun and little wind: the hottest that panels get. Common practice, no source. */
const HOT = { planeWm2: 1000, windMs: 1 };
const COLDEST_IN_TABLE_C = -40;

export const stringVoltages: CheckSubjectSpec = {
  id: 'string-voltages',
  title: 'Voltage of panel strings in cold and heat',
  look: (context) =>
    joinOutcomes(
      context.household.units.flatMap((unit) =>
        (unit.solar?.arrays ?? []).flatMap((array, a) => lookAt(context, unit, array, a)),
      ),
    ),
};

function lookAt(context: CheckContext, unit: UnitSpec, array: ArraySpec, a: number): Partial<CheckOutcome>[] {
  const where = `units.${unit.id}.solar.arrays.${a}.string`;
  const { string } = array;
  const window = unit.solar?.window;
  if (string === undefined) return [unknown(where, 'how the panels are strung together is not given', where)];
  return [
    cold(context, string, window, where),
    window === undefined
      ? unknown(where, 'the window of the solar input is not given', `units.${unit.id}.solar.window`)
      : hot(context, array, string, window, where),
  ];
}

type PanelString = NonNullable<ArraySpec['string']>;
type Window = NonNullable<NonNullable<UnitSpec['solar']>['window']>;

function coldV({ openCircuitV, openCircuitPerC, inSeries }: PanelString, ambientC: number): number {
  if (openCircuitPerC !== undefined) return coldStringV(openCircuitV, openCircuitPerC, ambientC, inSeries);
  return inSeries * openCircuitV * coldVoltageFactor(Math.max(COLDEST_IN_TABLE_C, ambientC));
}

/** Without the site's record low only what the draws met is looked at, and said so. */
function cold(
  { scenario, observed }: CheckContext,
  string: PanelString,
  window: Window | undefined,
  where: string,
): Partial<CheckOutcome> {
  const { recordLowC } = scenario.site;
  const ambientC = Math.min(recordLowC ?? Infinity, observed.lowestOutdoorC);
  const volts = coldV(string, ambientC);
  const limitV = Math.min(window?.maxV ?? Infinity, HOUSE_LIMIT_V);
  const untold =
    recordLowC === undefined
      ? unknown(
          where,
          `no record low given: only the ${inC(observed.lowestOutdoorC)} of the outages watched was looked at`,
          'site.recordLowC',
        )
      : {};
  if (volts <= limitV) return joinOutcomes([looked(), untold]);
  const most = Math.floor(limitV / (volts / string.inSeries));
  const whose = window !== undefined && window.maxV <= HOUSE_LIMIT_V ? 'the input bears' : 'a house may have';
  const finding = looked({
    severity: 'mend',
    where: `${where}.inSeries`,
    found: `At ${inC(ambientC)}, ${string.inSeries} panels in series reach ${inV(volts)} without load; ${whose} ${inV(limitV)}. That can destroy the input on the first clear cold morning.`,
    numbers: [
      { what: 'open circuit in the cold', value: volts, unit: 'V' },
      { what: 'limit', value: limitV, unit: 'V' },
      { what: 'temperature', value: ambientC, unit: '°C' },
      { what: 'most panels in series', value: most, unit: '' },
    ],
    todo: `At most ${most} in series. Leave the input switched off at its disconnect until an electrician has changed it: wires are live whenever there is light, and connectors pulled apart under load draw an arc.`,
    rule: CHECK_RULES.coldString,
  });
  return joinOutcomes([finding, untold]);
}

function hot(
  { scenario }: CheckContext,
  array: ArraySpec,
  string: PanelString,
  window: Window,
  where: string,
): Partial<CheckOutcome> {
  const { recordHighC } = scenario.site;
  if (recordHighC === undefined)
    return unknown(where, 'no record high given: working voltage in heat not looked at', 'site.recordHighC');
  const { openBackHeatLossU0, windHeatLossU1, powerTemperatureCoefficientPerC } = array;
  const cellC = faimanCellC(HOT.planeWm2, recordHighC, HOT.windMs, openBackHeatLossU0, windHeatLossU1);
  const perC = string.maximumPowerPerC ?? powerTemperatureCoefficientPerC;
  const workingV = stringV(string.maximumPowerV, perC, cellC, string.inSeries);
  const openV = stringV(string.openCircuitV, string.openCircuitPerC ?? perC, cellC, string.inSeries);
  const numbers = [
    { what: 'working voltage in heat', value: workingV, unit: 'V' },
    { what: 'open circuit in heat', value: openV, unit: 'V' },
    { what: 'least of the window', value: window.minV, unit: 'V' },
    ...(window.startV === undefined ? [] : [{ what: 'the input wakes at', value: window.startV, unit: 'V' }]),
    { what: 'cells', value: cellC, unit: '°C' },
  ];
  const low = workingV < window.minV;
  const sleeps = window.startV !== undefined && openV < window.startV;
  if (!low && !sleeps) return looked();
  const what = low
    ? `work at ${inV(workingV)}, below the ${inV(window.minV)} from which the input follows them`
    : `reach ${inV(openV)} without load, below the ${inV(window.startV!)} at which the input wakes`;
  return looked({
    severity: 'watch',
    where: `${where}.inSeries`,
    found: `On the hottest day (${inC(recordHighC)}, cells near ${inC(cellC)}) ${string.inSeries} panels in series ${what}: the array then gives little or nothing.`,
    numbers,
    todo: 'One panel more in series, if the cold allows it.',
    rule: CHECK_RULES.hotString,
  });
}
