/** One run written out minute by minute: every column an auditor needs. It steps the same loop, a minute at a time. */
import { neutralOfWattsA } from '../power/neutral-current.ts';
import type { Household } from './household.ts';
import { endEvents, traceEvents, watchSwitches, type TraceEvent } from './trace-events.ts';
import { advance } from './advance.ts';
import { closeAll } from './apply-power.ts';
import { groupOnMinutes, unitBooks } from './ledger.ts';
import { ASLEEP, EMPTY_BANK, now, ON, PARTNER_STOPPED, TRIPPED, type Run } from './run.ts';
import { makes240V } from './sources-run.ts';
import { runMinutes, signedC, wantedMinutes } from './step-thermostat.ts';
import { emptySources, readSources, recordSources, type SourceTrace } from './trace-sources.ts';
import { availableW } from './unit-solar.ts';

export const UNIT_MODES: Readonly<Record<number, string>> = {
  [ON]: 'on',
  [ASLEEP]: 'asleep',
  [EMPTY_BANK]: 'empty',
  [TRIPPED]: 'tripped',
  [PARTNER_STOPPED]: 'partner stopped',
};

/** One unit, one value per minute. Watts are the minute's mean; `batteryW` is positive while charging. */
export interface UnitTrace {
  readonly id: string;
  readonly solarAvailableW: Float64Array;
  readonly solarUsedW: Float64Array;
  readonly solarStoredW: Float64Array;
  readonly solarClippedW: Float64Array;
  readonly solarCurtailedW: Float64Array;
  readonly loadW: Float64Array;
  readonly inverterLossW: Float64Array;
  readonly batteryW: Float64Array;
  readonly batteryLossW: Float64Array;
  /** AC taken from a source, and what of it its charger loses; left out where the household has none. */
  readonly sourceInW?: Float64Array;
  readonly chargerLossW?: Float64Array;
  /** At the minute's end. */
  readonly storedWh: Float64Array;
  readonly chargeFraction: Float64Array;
  /** At the minute's end. */
  readonly mode: string[];
}

/** One circuit, one value per minute. */
export interface CircuitTrace {
  readonly id: string;
  readonly wantedW: Float64Array;
  readonly servedW: Float64Array;
  /** 1 where the strategy lets it be on at the minute's end. */
  readonly allowed: Uint8Array;
  /** Of its first thermostat, at the minute's end; undefined when it has none. */
  readonly temperatureC: Float64Array | undefined;
}

export interface Trace {
  readonly minutes: number;
  readonly units: readonly UnitTrace[];
  readonly circuits: readonly CircuitTrace[];
  /** Each source that the household has, none without. */
  readonly sources: readonly SourceTrace[];
  /** Neutral current, A, from the difference of the legs at 120 V and unity power factor; 0 with one unit. */
  readonly neutralA: Float64Array;
  readonly events: readonly TraceEvent[];
}

/** Lives the run through to `to` and keeps every minute. The run ends as `advance(run, to)` would leave it. */
export function traceRun(run: Run, to: number): Trace {
  const units = run.household.units.map(({ id }) => emptyUnit(id, to, run.sources !== undefined));
  const circuits = run.household.circuits.map((c, i) => emptyCircuit(c.id, to, hasThermostat(run, i)));
  const sources = emptySources(run, to);
  let sourcesBefore = readSources(run, sources);
  const neutralA = new Float64Array(to);
  const events: TraceEvent[] = [];
  const meters = createMeters(run);
  for (let m = 0; m < to; m++) {
    const before = watchSwitches(run);
    advance(run, m + 1);
    units.forEach((trace, u) => recordUnit(trace, run, u, m, meters));
    circuits.forEach((trace, c) => recordCircuit(trace, run, c, m, meters));
    const sourcesAfter = readSources(run, sources);
    recordSources(sources, sourcesBefore, sourcesAfter, m);
    sourcesBefore = sourcesAfter;
    if (units.length === 2) neutralA[m] = neutralAmperes(run, units, circuits, m);
    events.push(...traceEvents(run, before, m));
    readMeters(run, meters);
  }
  closeAll(run);
  events.push(...endEvents(run));
  return { minutes: to, units, circuits, sources, neutralA, events };
}

/** Readings at the end of the minute before, to take differences from. */
interface Meters {
  readonly books: ReturnType<typeof unitBooks>[];
  readonly groupMinutes: Float64Array;
  readonly runMinutes: Float64Array;
  readonly wantedMinutes: Float64Array;
}

function createMeters(run: Run): Meters {
  return {
    books: run.units.map((_, u) => unitBooks(run, u, 0)),
    groupMinutes: new Float64Array(run.groups.length),
    runMinutes: new Float64Array(run.draw.usage.thermostats.length),
    wantedMinutes: new Float64Array(run.draw.usage.thermostats.length),
  };
}

function readMeters(run: Run, meters: Meters): void {
  run.units.forEach((_, u) => (meters.books[u] = unitBooks(run, u, 0)));
  run.groups.forEach((_, g) => (meters.groupMinutes[g] = groupOnMinutes(run, g)));
  run.draw.usage.thermostats.forEach((_, i) => {
    meters.runMinutes[i] = thermostatRan(run, i);
    meters.wantedMinutes[i] = thermostatWanted(run, i);
  });
}

function recordUnit(trace: UnitTrace, run: Run, u: number, m: number, meters: Meters): void {
  const before = meters.books[u]!;
  const books = unitBooks(run, u, 0);
  const wattsOf = (key: keyof typeof books) => (books[key] - before[key]) * 60;
  const solar = run.draw.solar[u]!;
  const usableW = solar.usableW[m]!;
  trace.solarAvailableW[m] = availableW(solar, m);
  trace.solarClippedW[m] = availableW(solar, m) - usableW;
  trace.solarCurtailedW[m] = wattsOf('solarCurtailedWh');
  trace.solarStoredW[m] = wattsOf('solarStoredWh');
  trace.solarUsedW[m] = usableW - wattsOf('solarCurtailedWh') - wattsOf('solarStoredWh');
  if (trace.sourceInW !== undefined) trace.sourceInW[m] = wattsOf('sourceInWh');
  if (trace.chargerLossW !== undefined) trace.chargerLossW[m] = wattsOf('chargerLossWh');
  trace.loadW[m] = wattsOf('loadWh');
  trace.inverterLossW[m] = wattsOf('inverterLossWh');
  trace.batteryW[m] = wattsOf('solarStoredWh') + wattsOf('sourceStoredWh') - wattsOf('dischargedWh');
  trace.batteryLossW[m] = wattsOf('chargeLossWh') + wattsOf('dischargeLossWh') + wattsOf('selfDischargedWh');
  trace.storedWh[m] = books.storedEndWh;
  trace.chargeFraction[m] = books.storedEndWh / run.household.capacityWh[u]!;
  trace.mode.push(UNIT_MODES[run.units[u]!.mode]!);
}

function recordCircuit(trace: CircuitTrace, run: Run, c: number, m: number, meters: Meters): void {
  const { group } = run.household.circuits[c]!;
  const onShare = groupOnMinutes(run, group) - meters.groupMinutes[group]!;
  const plainW = run.draw.usage.circuits[c]!.demandW[m]!;
  let wanted = plainW;
  let served = plainW * onShare;
  run.draw.usage.thermostats.forEach(({ circuitIndex }, i) => {
    if (circuitIndex !== c) return;
    const watts = run.draw.thermostatPlaces[i]!.parameters.runningW;
    wanted += watts * (thermostatWanted(run, i) - meters.wantedMinutes[i]!);
    served += watts * (thermostatRan(run, i) - meters.runMinutes[i]!);
    if (trace.temperatureC !== undefined && trace.temperatureC[m] === 0) {
      trace.temperatureC[m] = thermostatC(run, i);
    }
  });
  trace.wantedW[m] = wanted;
  trace.servedW[m] = served;
  trace.allowed[m] = run.control.allowed[c]!;
}

function thermostatRan(run: Run, i: number): number {
  return runMinutes(run.draw.thermostatPlaces[i]!, run.thermostatStates[i]!, now(run));
}

function thermostatWanted(run: Run, i: number): number {
  return wantedMinutes(run.draw.thermostatPlaces[i]!, run.thermostatStates[i]!, now(run));
}

function thermostatC(run: Run, i: number): number {
  const sign = run.draw.thermostatPlaces[i]!.parameters.sign;
  return sign * signedC(run.draw.thermostatPlaces[i]!, run.thermostatStates[i]!, now(run));
}

/**
 * 240 V circuits load both legs alike and leave the neutral alone. With each unit on its own leg it carries their
 * difference; while one unit or a 120 V source feeds both legs these are in step, and it carries their sum.
 */
function neutralAmperes(
  run: Run,
  units: readonly UnitTrace[],
  circuits: readonly CircuitTrace[],
  m: number,
): number {
  const legW = [0, 0];
  run.household.circuits.forEach(({ is240V, unit }, c) => {
    if (!is240V && unit >= 0) legW[unit]! += circuits[c]!.servedW[m]!;
  });
  const oneFeedsBoth = units.some(({ loadW }, u) => legW[u]! > loadW[m]! + 1e-6);
  const inStep = oneFeedsBoth || !makes240V(run.sources);
  return neutralOfWattsA(legW[0]!, legW[1]!, inStep);
}

function hasThermostat(run: Run, circuit: number): boolean {
  return run.draw.usage.thermostats.some((t) => t.circuitIndex === circuit);
}

function emptyUnit(id: Household['units'][number]['id'], minutes: number, hasSources: boolean): UnitTrace {
  const column = () => new Float64Array(minutes);
  return {
    id,
    solarAvailableW: column(),
    solarUsedW: column(),
    solarStoredW: column(),
    solarClippedW: column(),
    solarCurtailedW: column(),
    loadW: column(),
    inverterLossW: column(),
    batteryW: column(),
    batteryLossW: column(),
    ...(hasSources ? { sourceInW: column(), chargerLossW: column() } : {}),
    storedWh: column(),
    chargeFraction: column(),
    mode: [],
  };
}

function emptyCircuit(id: string, minutes: number, thermostat: boolean): CircuitTrace {
  return {
    id,
    wantedW: new Float64Array(minutes),
    servedW: new Float64Array(minutes),
    allowed: new Uint8Array(minutes),
    temperatureC: thermostat ? new Float64Array(minutes) : undefined,
  };
}
