/** The books of one unit and of the house: every watt-hour on exactly one line. MODEL.md §10. */
import { solarWmin } from '../power/hour-figures.ts';
import {
  CHARGER_LOSS_WMIN,
  FROM_GENERATOR_WMIN,
  FROM_GRID_WMIN,
  FROM_VEHICLE_WMIN,
  SOURCE_STORED_WMIN,
} from '../power/source-feed.ts';
import { groupWminUntil } from './prepared-draw.ts';
import { now, type Run } from './run.ts';
import { runMinutes, wantedMinutes } from './step-thermostat.ts';

/** Watt-minutes that unit `u` delivered to circuits, from the circuits' side of the books. */
function unitServedWmin(run: Run, u: number): number {
  const time = now(run);
  const { groups, draw, thermostatCounted } = run;
  const { pattern, servedWmin } = run.units[u]!;
  let wmin = servedWmin;
  for (let g = 0; g < groups.length; g++) {
    const { on, since } = groups[g]!;
    if (on && since < time) wmin += pattern.shares[g]! * openWmin(run, g, time);
  }
  for (let i = 0; i < thermostatCounted.length; i++) {
    const share = run.thermostatFeeds[2 * i + u]!;
    if (share === 0) continue;
    const place = draw.thermostatPlaces[i]!;
    const ran = runMinutes(place, run.thermostatStates[i]!, time);
    wmin += share * place.parameters.runningW * (ran - thermostatCounted[i]!);
  }
  return wmin;
}

/** Watt-minutes that the group has wanted since its feeder last changed. */
function openWmin(run: Run, group: number, time: number): number {
  return groupWminUntil(run.draw, group, time) - run.groups[group]!.sinceWmin;
}

/** Sums of one unit from the outage's start, Wh. */
export interface UnitBooks {
  readonly solarUsableWh: number;
  /** Solar that went straight to circuits and to the inverter's own loss. */
  readonly solarUsedWh: number;
  /** Solar into the bank, at its terminals. */
  readonly solarStoredWh: number;
  readonly solarCurtailedWh: number;
  /** AC taken from sources: the grid, a generator, a vehicle. */
  readonly sourceInWh: number;
  /** Of it, to circuits and to the inverter's own loss; into the bank, at its terminals; lost in the charger. */
  readonly sourceUsedWh: number;
  readonly sourceStoredWh: number;
  readonly chargerLossWh: number;
  /** To circuits; from their side of the books, so that the bus balance checks the one against the other. */
  readonly loadWh: number;
  readonly inverterLossWh: number;
  readonly dischargedWh: number;
  readonly chargeLossWh: number;
  readonly dischargeLossWh: number;
  readonly selfDischargedWh: number;
  readonly storedStartWh: number;
  readonly storedEndWh: number;
}

/** Usable solar from the start to the present moment, Wh. */
function solarUntilNow(run: Run, u: number): number {
  const solar = run.draw.solar[u]!;
  let wmin = solarWmin(solar, 0, run.minute);
  if (run.phase > 0) wmin += run.phase * solar.usableW[run.minute]!;
  return wmin / 60;
}

/** @param solarUsableWh usable solar so far, when the caller knows it already */
export function unitBooks(run: Run, u: number, solarUsableWh = solarUntilNow(run, u)): UnitBooks {
  const { state, parameters } = run.units[u]!;
  const chargedWh = state.chargedWmin / 60;
  const dischargedWh = state.dischargedWmin / 60;
  const curtailedWh = state.curtailedWmin / 60;
  const { sourceInWh, sourceUsedWh, sourceStoredWh, chargerLossWh } = sourceBooks(run, u);
  const solarStoredWh = chargedWh - sourceStoredWh;
  return {
    sourceInWh,
    sourceUsedWh,
    sourceStoredWh,
    chargerLossWh,
    solarUsableWh,
    solarUsedWh: solarUsableWh - solarStoredWh - curtailedWh,
    solarStoredWh,
    solarCurtailedWh: curtailedWh,
    loadWh: unitServedWmin(run, u) / 60,
    inverterLossWh: state.lossWmin / 60,
    dischargedWh,
    chargeLossWh: chargedWh * (1 - parameters.chargeEfficiency),
    dischargeLossWh: dischargedWh / parameters.dischargeEfficiency - dischargedWh,
    selfDischargedWh: state.selfDischargedWmin / 60,
    storedStartWh: run.draw.startWmin[u]! / 60,
    storedEndWh: state.storedWmin / 60,
  };
}

type SourceBooks = Pick<UnitBooks, 'sourceInWh' | 'sourceUsedWh' | 'sourceStoredWh' | 'chargerLossWh'>;

const NO_SOURCE: SourceBooks = { sourceInWh: 0, sourceUsedWh: 0, sourceStoredWh: 0, chargerLossWh: 0 };

function sourceBooks({ sources }: Run, u: number): SourceBooks {
  if (sources === undefined) return NO_SOURCE;
  const { sums } = sources.feeds[u]!;
  const sourceInWh = (sums[FROM_GRID_WMIN]! + sums[FROM_GENERATOR_WMIN]! + sums[FROM_VEHICLE_WMIN]!) / 60;
  const sourceStoredWh = sums[SOURCE_STORED_WMIN]! / 60;
  const chargerLossWh = sums[CHARGER_LOSS_WMIN]! / 60;
  return {
    sourceInWh,
    sourceUsedWh: sourceInWh - sourceStoredWh - chargerLossWh,
    sourceStoredWh,
    chargerLossWh,
  };
}

/** What does not add up in one unit's books, Wh; both are 0 but for rounding. */
export function unitImbalanceWh(books: UnitBooks): { readonly bus: number; readonly bank: number } {
  const { solarUsedWh, sourceUsedWh, dischargedWh, loadWh, inverterLossWh } = books;
  const gained =
    books.solarStoredWh +
    books.sourceStoredWh -
    books.chargeLossWh -
    (dischargedWh + books.dischargeLossWh) -
    books.selfDischargedWh;
  return {
    bus: solarUsedWh + sourceUsedWh + dischargedWh - loadWh - inverterLossWh,
    bank: books.storedStartWh + gained - books.storedEndWh,
  };
}

/** Energy of one group of circuits (thermostats included) from the start to now, Wh. */
export function groupBooks(
  run: Run,
  group: number,
): { readonly wantedWh: number; readonly servedWh: number } {
  const state = run.groups[group]!;
  const time = now(run);
  let wanted = groupWminUntil(run.draw, group, time);
  let served = state.servedWmin + (state.on ? wanted - state.sinceWmin : 0);
  for (const i of run.draw.groupThermostats[group]!) {
    const place = run.draw.thermostatPlaces[i]!;
    wanted += place.parameters.runningW * wantedMinutes(place, run.thermostatStates[i]!, time);
    served += place.parameters.runningW * runMinutes(place, run.thermostatStates[i]!, time);
  }
  return { wantedWh: wanted / 60, servedWh: served / 60 };
}

/** Minutes for which the group has been on so far. */
export function groupOnMinutes(run: Run, group: number): number {
  const { on, since, onMinutes } = run.groups[group]!;
  return on ? onMinutes + now(run) - since : onMinutes;
}
