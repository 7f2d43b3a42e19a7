/** When a vehicle's outlet is plugged in, in one draw. MODEL.md E7. */
import { minutesInWindows } from '../clock/clock-windows.ts';
import type { OutageClock } from '../clock/outage-clock.ts';
import type { VehicleSpec } from '../scenario/schema-sources.ts';

/** The limits as minutes at the outlet's full watts: what is plugged in counts as given, wanted or not. */
export interface VehiclePlan {
  /** 1 for each minute of the local day in which it may be plugged in. */
  readonly within: Uint8Array;
  readonly mostMinutesPerDay: number;
  readonly mostMinutes: number;
}

export function planVehicle({
  outletW,
  during,
  hoursPerDay,
  mostWhPerDay,
  mostWh,
}: VehicleSpec): VehiclePlan {
  const minutesFor = (wh: number | undefined) => Math.floor((60 * (wh ?? Infinity)) / outletW);
  return {
    within: during === undefined ? new Uint8Array(1440).fill(1) : minutesInWindows(during),
    mostMinutesPerDay: Math.min(Math.round(60 * (hoursPerDay ?? 24)), minutesFor(mostWhPerDay)),
    mostMinutes: minutesFor(mostWh),
  };
}

/**
 * Fills `switches` with the minutes at which it is plugged in (1st, 3rd, …) and unplugged (2nd, 4th, …), rising.
 *
 * @param gridSwitches as `drawGridWindows` fills them: nobody runs a car while the grid is there
 */
export function fillVehicleHours(
  plan: VehiclePlan,
  clock: OutageClock,
  gridSwitches: readonly number[],
  switches: number[],
): void {
  switches.length = 0;
  let next = 0; // of the grid's switches
  let today = -1;
  let minutesToday = 0;
  let total = 0;
  let plugged = false;
  for (let m = 0; m < clock.minutes; m++) {
    while (next < gridSwitches.length && gridSwitches[next]! <= m) next++;
    if (clock.localDay[m] !== today) {
      today = clock.localDay[m]!;
      minutesToday = 0;
    }
    const gridIsBack = next % 2 === 1;
    const within = plan.within[clock.localMinuteOfDay[m]!] === 1;
    const plug = within && !gridIsBack && minutesToday < plan.mostMinutesPerDay && total < plan.mostMinutes;
    if (plug !== plugged) switches.push(m);
    plugged = plug;
    if (plug) {
      minutesToday++;
      total++;
    }
  }
}
