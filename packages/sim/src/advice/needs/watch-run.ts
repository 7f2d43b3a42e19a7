/** A run watched minute by minute: who has power, what runs, how warm it is. The minute loop itself is the study's. */
import { advance } from '../../step/advance.ts';
import { groupOnMinutes } from '../../step/ledger.ts';
import { now, type Run } from '../../step/run.ts';
import { runMinutes, signedC, wantedMinutes } from '../../step/step-thermostat.ts';

/** What a minute looked like; overwritten by the next. */
export interface Sight {
  readonly run: Run;
  minute: number;
  /** Per circuit, share of the minute with power. */
  readonly powered: Float64Array;
  /** Per thermostat, share of the minute in which it ran, and in which it wanted to. */
  readonly ran: Float64Array;
  readonly wanted: Float64Array;
  /** Per thermostat, at the minute's end. */
  readonly temperatureC: Float64Array;
}

/** Lives the run through to `to`, showing every minute. It ends as `advance(run, to)` would leave it. */
export function watchRun(run: Run, to: number, look: (sight: Sight) => void): void {
  const circuits = run.household.circuits;
  const thermostats = run.draw.usage.thermostats.length;
  const sight: Sight = {
    run,
    minute: 0,
    powered: new Float64Array(circuits.length),
    ran: new Float64Array(thermostats),
    wanted: new Float64Array(thermostats),
    temperatureC: new Float64Array(thermostats),
  };
  const before = {
    on: new Float64Array(run.groups.length),
    ran: new Float64Array(thermostats),
    wanted: new Float64Array(thermostats),
  };
  const onShare = new Float64Array(run.groups.length);
  for (let m = 0; m < to; m++) {
    advance(run, m + 1);
    for (let g = 0; g < onShare.length; g++) {
      const on = groupOnMinutes(run, g);
      onShare[g] = on - before.on[g]!;
      before.on[g] = on;
    }
    for (let c = 0; c < circuits.length; c++) sight.powered[c] = onShare[circuits[c]!.group]!;
    for (let i = 0; i < thermostats; i++) readThermostat(run, i, sight, before);
    sight.minute = m;
    look(sight);
  }
}

function readThermostat(
  run: Run,
  i: number,
  sight: Sight,
  before: { readonly ran: Float64Array; readonly wanted: Float64Array },
): void {
  const state = run.thermostatStates[i]!;
  const { thermostatPlaces, usage } = run.draw;
  const place = thermostatPlaces[i]!;
  const ran = runMinutes(place, state, now(run));
  const wanted = wantedMinutes(place, state, now(run));
  sight.ran[i] = ran - before.ran[i]!;
  sight.wanted[i] = wanted - before.wanted[i]!;
  before.ran[i] = ran;
  before.wanted[i] = wanted;
  sight.temperatureC[i] = usage.thermostats[i]!.sign * signedC(place, state, now(run));
}
