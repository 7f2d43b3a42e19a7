/** Amounts as they stand in findings: one spelling for all. */

export const inW = (watts: number) => `${Math.round(watts)} W`;
export const inA = (amps: number) => `${tenths(amps)} A`;
export const inV = (volts: number) => `${tenths(volts)} V`;
export const inC = (celsius: number) => `${tenths(celsius)} °C`;
export const inPercent = (fraction: number) => `${tenths(fraction * 100)} %`;
export const inKWh = (wh: number) => `${tenths(wh / 1000)} kWh`;

/** Both lengths: the trade measures in feet, the scenario in metres. */
export const inRun = (metres: number) => `${tenths(metres)} m (${Math.round(metres / 0.3048)} ft)`;

export const inAwg = (awg: number | string) => `${awg} AWG`;

/** `3 of 20 outages watched`. */
export const ofDraws = (draws: number, all: number) => `${draws} of ${all} outages watched`;

/** At most one decimal, none where it is zero. */
export function tenths(value: number): string {
  return String(Math.round(value * 10) / 10).replace(/^-0$/, '0');
}
