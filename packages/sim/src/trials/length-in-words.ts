/**
 * The one rule by which a length of time is told: minutes below an hour, hours below a day, tenths of a day from there.
 * Terminal and pages take all their lengths from here.
 */

const SLACK = 1e-9; // 2.3 × 10 falls short of 23 by a last bit

type Unit = 'minute' | 'hour' | 'day';

const PER_DAY: Readonly<Record<Unit, number>> = { minute: 1440, hour: 24, day: 1 };
const SIGNS: Readonly<Record<Unit, string>> = { minute: 'min', hour: 'h', day: 'd' };

/** `19` hours, `2.4` days, `≥ 14` days. */
export interface ToldLength {
  readonly amount: string;
  readonly unit: Unit;
}

function unitOf(days: number): Unit {
  if (days >= 1 - SLACK) return 'day';
  return days * 24 >= 1 - SLACK ? 'hour' : 'minute';
}

/** Rounded down: "at least" stays true. */
export function lengthDown(days: number): ToldLength {
  const unit = unitOf(days);
  if (unit === 'day') return { amount: tenthsDown(days), unit };
  return { amount: String(Math.floor(days * PER_DAY[unit] + SLACK)), unit };
}

/** Rounded up: for an upper limit. */
export function lengthUp(days: number): ToldLength {
  const unit = unitOf(days);
  if (unit === 'day') return { amount: tenthsUp(days), unit };
  return { amount: String(Math.ceil(days * PER_DAY[unit] - SLACK)), unit };
}

/** To the nearest: for a difference or a mean, which promise nothing. */
export function lengthNear(days: number): ToldLength {
  const [minutes, hours] = [Math.round(days * 1440), Math.round(days * 24)];
  if (minutes < 60) return { amount: String(minutes), unit: 'minute' };
  if (hours < 24) return { amount: String(hours), unit: 'hour' };
  return { amount: (Math.round(days * 10) / 10).toFixed(1), unit: 'day' };
}

/** What the horizon hides: `≥ 14` days. */
export function pastHorizon(horizonDays: number): ToldLength {
  const { amount, unit } = lengthDown(horizonDays);
  return { amount: `≥\u00a0${amount.replace(/\.0$/, '')}`, unit };
}

function tenthsDown(days: number): string {
  return (Math.floor(days * 10 + SLACK) / 10).toFixed(1);
}

function tenthsUp(days: number): string {
  return (Math.ceil(days * 10 - SLACK) / 10).toFixed(1);
}

/** `19 hours`, `1 hour`, `2.4 days`; whole days without their nought: `4 days`. */
export function inWords({ amount, unit }: ToldLength): string {
  const short = amount.replace(/\.0$/, '');
  return `${short}\u00a0${plural(unit, short)}`;
}

/** The same for a column: `19 h`, `2.4 d`, `4.0 d`. */
export function inSigns({ amount, unit }: ToldLength): string {
  return `${amount}\u00a0${SIGNS[unit]}`;
}

/** Two limits, each in its own unit, which is said once where both have it: `14 to 19 hours`, `14 hours` and `1.2 days`. */
export function limitsInWords(low: ToldLength, high: ToldLength): { low: string; high: string } {
  return limits(low, high, ({ amount, unit }) => `${amount}\u00a0${plural(unit, amount)}`);
}

/** `14` and `19 h`; `14 h` and `1.2 d`. */
export function limitsInSigns(low: ToldLength, high: ToldLength): { low: string; high: string } {
  return limits(low, high, inSigns);
}

/** No time at all has no unit of its own: `0 to 5 hours`. */
function limits(low: ToldLength, high: ToldLength, told: (length: ToldLength) => string) {
  const alike = low.unit === high.unit || low.amount === '0';
  return { low: alike ? low.amount : told(low), high: told(high) };
}

const plural = (unit: Unit, amount: string): string => (/^−?1$/.test(amount) ? unit : `${unit}s`);
