/** The inputs that the household does not know, each as the random numbers that carry it. MODEL.md §18.1. */
import type { StreamSwap } from '../../chance/mixed-streams.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { UnknownsSpec } from '../../scenario/schema-unknowns.ts';
import { healthRange, idleRange, VALUE_PURPOSES } from './uncertain-values.ts';

/** Some numbers of a draw. */
export type Numbers = Pick<StreamSwap, 'covers' | 'place'>;

/** Low and high of an input when it is moved alone. */
export interface Ends {
  /** In words, such as `90 % of nameplate left`, `06:00`. */
  readonly low: string;
  readonly high: string;
  /** The numbers that are held, and where, 0…1; undefined for the weather, which is swapped for chosen skies. */
  readonly held: { readonly numbers: Numbers; readonly low: number; readonly high: number } | undefined;
}

export interface UncertainInput {
  readonly id: string;
  readonly title: string;
  readonly numbers: Numbers;
  /** True for a figure that is fixed but not known; false for what every outage brings anew. */
  readonly isValue: boolean;
  /** Weather, sun and habits of a draw are the same whatever it is: it is a figure of the units alone. */
  readonly keepsWorld: boolean;
  readonly ends: Ends;
}

export const WEATHER = 'weather';
const startsWith = (prefix: string): Numbers => ({ covers: (purpose) => purpose.startsWith(prefix) });
const only = (purpose: string, place?: number): Numbers => ({ covers: (p) => p === purpose, place });

/** Those of one alternative, in the order weather, usage, start, charge, grid, values. What does not vary is left out. */
export function inputsOf(scenario: Scenario, alternative: number): UncertainInput[] {
  const random = scenario.outage.startLocal === undefined;
  const { units, sources } = scenario.alternatives[alternative]!.household;
  const cycles = units.some(
    ({ battery }) => battery.startFraction === undefined && battery.reserveFraction < 1,
  );
  return [
    weather(),
    usage(),
    ...(random ? [startDay(), startHour()] : []),
    ...(cycles ? [charge()] : []),
    ...(sources?.grid === undefined ? [] : [gridHours()]),
    ...valueInputs(scenario, alternative),
  ];
}

function weather(): UncertainInput {
  const ends = { low: 'the dullest fifth of skies', high: 'the brightest fifth', held: undefined };
  return {
    id: WEATHER,
    title: 'Weather',
    numbers: startsWith('weather/'),
    isValue: false,
    keepsWorld: false,
    ends,
  };
}

function usage(): UncertainInput {
  const held = { numbers: only('usage/household'), low: 0.1, high: 0.9 };
  const ends = { low: 'frugal, one home in ten below', high: 'lavish, one in ten above', held };
  return {
    id: 'usage',
    title: 'Usage',
    numbers: startsWith('usage/'),
    isValue: false,
    keepsWorld: false,
    ends,
  };
}

function startDay(): UncertainInput {
  const numbers = only('start', 0);
  const ends = {
    low: 'early in the season (1/10)',
    high: 'late (9/10)',
    held: { numbers, low: 0.1, high: 0.9 },
  };
  return { id: 'start-day', title: 'Day it begins', numbers, isValue: false, keepsWorld: false, ends };
}

function startHour(): UncertainInput {
  const numbers = only('start', 1);
  const ends = { low: '06:00', high: '18:00', held: { numbers, low: 0.25, high: 0.75 } };
  return { id: 'start-hour', title: 'Hour it begins', numbers, isValue: false, keepsWorld: false, ends };
}

function charge(): UncertainInput {
  const numbers = startsWith('charge/');
  const ends = {
    low: 'a tenth of the way from reserve to full',
    high: 'nine tenths',
    held: { numbers, low: 0.1, high: 0.9 },
  };
  return { id: 'charge', title: 'Charge at the start', numbers, isValue: false, keepsWorld: true, ends };
}

/** Rolling outages: when the grid comes back first decides most of what they give. */
function gridHours(): UncertainInput {
  const ends = {
    low: 'power first back early (1/10)',
    high: 'late (9/10)',
    held: { numbers: only('grid/windows', 0), low: 0.1, high: 0.9 },
  };
  return {
    id: 'grid',
    title: 'Hours of grid',
    numbers: startsWith('grid/'),
    isValue: false,
    keepsWorld: false,
    ends,
  };
}

function valueInputs({ unknowns = {}, alternatives }: Scenario, alternative: number): UncertainInput[] {
  const { units } = alternatives[alternative]!.household;
  const ofUnits = (range: (u: UnknownsSpec, unit: (typeof units)[number]) => readonly [number, number]) =>
    units.map((unit) => range(unknowns, unit));
  const hasPanels = units.some((u) => u.solar !== undefined);
  return [
    value(
      'health',
      'Module health',
      VALUE_PURPOSES.health,
      ofUnits(healthRange),
      PERCENT,
      'of nameplate left',
    ),
    value('idle', 'Idle watts', VALUE_PURPOSES.idle, ofUnits(idleRange), WATTS),
    value(
      'efficiency',
      'One-way efficiency',
      VALUE_PURPOSES.efficiency,
      [unknowns.oneWayEfficiency],
      PERCENT,
      'comes through',
    ),
    hasPanels
      ? value(
          'panel-loss',
          'Panel losses',
          VALUE_PURPOSES.panelLoss,
          [unknowns.panelLossFraction],
          PERCENT,
          'of the yield lost',
        )
      : [],
    value(
      'rooms',
      'Rooms and outdoors',
      VALUE_PURPOSES.rooms,
      [unknowns.indoorFollowsFraction],
      PERCENT,
      'of the way to the outdoor mean',
    ),
  ].flat();
}

const shortly = (value: number) => String(Number(value.toPrecision(3)));
const PERCENT = (fraction: number) => `${shortly(fraction * 100)}\u00a0%`;
const WATTS = (watts: number) => `${shortly(watts)}\u00a0W`;

/** Nothing where no range is given or it has no width. `meaning`: of what the low is so much; the high then goes without saying. */
function value(
  id: string,
  title: string,
  purpose: string,
  ranges: readonly (readonly [number, number] | undefined)[],
  spelt: (value: number) => string,
  meaning?: string,
): UncertainInput[] {
  const given = ranges.flatMap((range) => (range === undefined ? [] : [range]));
  if (!given.some(([low, high]) => low < high)) return [];
  const words = (end: 0 | 1) => [...new Set(given.map((range) => spelt(range[end])))].join(', ');
  const numbers = only(purpose);
  const low = meaning === undefined ? words(0) : `${words(0)} ${meaning}`;
  const ends = { low, high: words(1), held: { numbers, low: 0, high: 1 } };
  const keepsWorld = purpose !== VALUE_PURPOSES.rooms; // rooms warm and cool with it, and appliances in them
  return [{ id, title, numbers, isValue: true, keepsWorld, ends }];
}
