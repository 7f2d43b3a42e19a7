/** A finished run as one outcome row. */
import { groupBooks, unitBooks } from './ledger.ts';
import { closeAll } from './apply-power.ts';
import { causeIndex } from './end-causes.ts';
import { generatorFuelL, generatorMinutes } from './generator-run.ts';
import { now, type Run } from './run.ts';
import { generatorWmin, gridMinutes } from './sources-run.ts';

const NOT = NaN; // "did not happen"
const orNot = (minute: number) => (minute === Infinity ? NOT : minute);

/** Writes one value of the row under construction. */
export type WriteCell = (column: string, value: number) => void;

/** How long tier 1 lasted, of a run that is closed, and why no longer. */
export function writeRuntime(run: Run, write: WriteCell): void {
  const censored = run.end.minute === Infinity;
  write('runtimeMinutes', censored ? run.draw.minutes : run.end.minute);
  write('censored', censored ? 1 : 0);
  write('endCause', censored ? causeIndex('still running') : run.end.cause);
  write('endUnit', censored || run.end.unit < 0 ? NOT : run.end.unit);
}

/** Closes the run, which has reached its horizon, and writes its row but for draw, alternative and strategy. */
export function writeOutcome(run: Run, write: WriteCell): void {
  closeAll(run);
  write('startEpochMinute', run.draw.clock.startEpochMinute);
  writeRuntime(run, write);
  write('firstShedMinute', orNot(run.firstShed));
  write('first240LossMinute', orNot(run.first240Loss));
  write('firstBlackoutMinute', orNot(run.firstBlackout));
  write('trips', run.trips);
  write('stageChanges', run.stageChanges);
  write('switchThrows', run.switchThrows);
  writeTiers(run, write);
  writeUnits(run, write);
  writeNeeds(run, write);
  writeSources(run, write);
}

function writeTiers(run: Run, write: WriteCell): void {
  const served = [0, 0, 0, 0, 0];
  const unserved = [0, 0, 0, 0, 0];
  run.household.groups.forEach(({ tier }, g) => {
    const { wantedWh, servedWh } = groupBooks(run, g);
    served[tier - 1]! += servedWh;
    unserved[tier - 1]! += wantedWh - servedWh;
  });
  served.forEach((wh, t) => write(`servedTier${t + 1}Wh`, wh));
  unserved.forEach((wh, t) => write(`unservedTier${t + 1}Wh`, wh));
}

function writeUnits(run: Run, write: WriteCell): void {
  const books = run.units.map((_, u) =>
    unitBooks(run, u, run.draw.solar[u]!.availableWh - run.draw.solar[u]!.clippedWh),
  );
  const sum = (of: (b: (typeof books)[number]) => number) => books.reduce((total, b) => total + of(b), 0);
  write(
    'solarAvailableWh',
    run.draw.solar.reduce((total, s) => total + s.availableWh, 0),
  );
  write(
    'solarUsedWh',
    sum((b) => b.solarUsedWh),
  );
  write(
    'solarStoredWh',
    sum((b) => b.solarStoredWh),
  );
  write(
    'solarClippedWh',
    run.draw.solar.reduce((total, s) => total + s.clippedWh, 0),
  );
  write(
    'solarCurtailedWh',
    sum((b) => b.solarCurtailedWh),
  );
  write(
    'inverterLossWh',
    sum((b) => b.inverterLossWh),
  );
  write(
    'batteryLossWh',
    sum((b) => b.chargeLossWh + b.dischargeLossWh + b.selfDischargedWh),
  );
  write(
    'storedStartWh',
    sum((b) => b.storedStartWh),
  );
  write(
    'storedEndWh',
    sum((b) => b.storedEndWh),
  );
  for (let u = 0; u < 2; u++) write(`minutesUnit${u}Down`, run.units[u]?.downMinutes ?? NOT);
  write(
    'sourceInWh',
    sum((b) => b.sourceInWh),
  );
  write(
    'chargerLossWh',
    sum((b) => b.chargerLossWh),
  );
}

function writeSources(run: Run, write: WriteCell): void {
  const time = now(run);
  const { sources } = run;
  const generator = sources?.generator;
  write('gridMinutes', sources === undefined ? 0 : gridMinutes(sources, time));
  write('generatorMinutes', generator === undefined ? 0 : generatorMinutes(generator, time));
  write('generatorStarts', generator?.starts ?? 0);
  write('generatorTrips', generator?.trips ?? 0);
  write('fuelUsedL', generator === undefined ? 0 : generatorFuelL(generator, time, generatorWmin(sources!)));
  write('fuelGoneMinute', orNot(generator?.fuelGoneAt ?? Infinity));
}

/**
 * A need is unmet as long as its worst-served circuit is: a thermostat with a limit counts minutes past the limit,
 * everything else minutes wanted without power beyond the grace.
 */
function writeNeeds(run: Run, write: WriteCell): void {
  run.household.needs.forEach((need, n) => {
    let worst = 0;
    run.household.circuits.forEach((circuit, c) => {
      if (circuit.need === n) worst = Math.max(worst, run.unmetMinutes[c]!, thermostatUnmetMinutes(run, c));
    });
    write(`need:${need}:firstMinute`, orNot(run.needFirst[n]!));
    write(`need:${need}:minutes`, worst);
  });
}

function thermostatUnmetMinutes(run: Run, circuit: number): number {
  let worst = 0;
  run.draw.usage.thermostats.forEach(({ circuitIndex, limitC }, i) => {
    const { waitedTooLongMinutes, beyondMinutes } = run.thermostatStates[i]!;
    const minutes = limitC === undefined ? waitedTooLongMinutes : beyondMinutes;
    if (circuitIndex === circuit) worst = Math.max(worst, minutes);
  });
  return worst;
}
