/** Energy that comes back during an outage, as somebody at the panel sees to it: generator, hours of grid, car, panels. */
import { GENERATOR_CAUTION, listed, unitsFedBy, VEHICLE_CAUTION, type HouseholdSpec } from '@rideout/sim';
import { counted } from '../charts/counted.ts';
import type { Look } from '../charts/look.ts';
import { percentText, windowsText } from './card-steps.ts';
import { minutesText, readingWords, unitName } from './card-words.ts';

type Strategy = HouseholdSpec['strategies'][number];
type Unit = HouseholdSpec['units'][number];
type Sources = NonNullable<HouseholdSpec['sources']>;
type Generator = NonNullable<Sources['generator']>;
type GeneratorRun = Generator['run'];
type Clock = Look['clock'];

/** One thing to do, or to know, about a source. */
export interface SourceLine {
  /** "Start the generator" and the like: what the eye looks for. */
  readonly what: string;
  readonly how: string;
}

/** In the order in which they come before the others: what feeds a unit first stands first. */
export function sourceLines(household: HouseholdSpec, strategy: Strategy, clock: Clock = 24): SourceLine[] {
  const { sources } = household;
  return [
    ...(sources?.grid ? gridLines(household, sources.grid) : []),
    ...(sources?.generator ? generatorLines(household, sources.generator, strategy, clock) : []),
    ...(sources?.vehicle ? vehicleLines(household, sources.vehicle, clock) : []),
    ...panelLines(household, clock),
  ];
}

function gridLines(
  { units, sources }: HouseholdSpec,
  { onHours, offHours }: NonNullable<Sources['grid']>,
): SourceLine[] {
  const before = [
    ...(sources?.generator ? ['stop the generator'] : []),
    ...(sources?.vehicle ? ['unplug the car'] : []),
  ];
  const charging = units.filter(({ charger }) => charger !== undefined);
  const charges =
    charging.length === 0
      ? 'No battery charges from it.'
      : `${charging.length === units.length ? batteriesOf(units) : namesOf(charging)} charge${charging.length === 1 ? 's' : ''} from it by ${charging.length === 1 ? 'itself' : 'themselves'}.`;
  return [
    {
      what: 'Grid back for a while',
      how: `Expect about ${hoursText(onHours)} of it after about ${hoursText(offHours)} without. ${before.length > 0 ? `First ${listed(before)}. ` : ''}Switch everything on again, one circuit at a time, and do now what takes most: water, cooking, washing. ${charges} When it goes again, go through the whole card anew by the readings.`,
    },
  ];
}

function generatorLines(
  household: HouseholdSpec,
  generator: Generator,
  strategy: Strategy,
  clock: Clock,
): SourceLine[] {
  const run = strategy.generator ?? generator.run;
  if (run.by === 'never') return [{ what: 'Generator', how: 'Leave it off: this strategy does not run it.' }];
  return [
    { what: 'Before the generator runs', how: GENERATOR_CAUTION },
    ...runLines(household, generator, run, clock),
    { what: 'What it carries', how: carriesWords(household, generator) },
    { what: 'Refill it', how: refillWords(generator) },
  ];
}

function runLines(
  household: HouseholdSpec,
  generator: Generator,
  run: Exclude<GeneratorRun, { by: 'never' }>,
  clock: Clock,
): SourceLine[] {
  const only = [
    ...(run.during ? [`only ${windowsText(run.during, clock)}`] : []),
    ...(generator.quietHours ? [`never in the quiet hours ${windowsText(generator.quietHours, clock)}`] : []),
  ];
  const bounds = only.length > 0 ? `, ${only.join(', ')}` : '';
  const byItself = generator.starts === 'automatic';
  const lookAtIt = 'Look now and then whether it has; if it fails, do it by hand.';
  const stops = [
    ...(run.during ? ['when those hours end'] : []),
    ...(generator.quietHours ? ['when the quiet hours begin'] : []),
    ...(byItself ? [] : ['at bedtime']),
  ];
  if (run.by === 'hours') {
    const how = `The first ${hoursText(run.hoursPerDay)} of every day in which it may run${bounds}.`;
    return byItself
      ? [{ what: 'The generator runs by itself', how: `${how} ${lookAtIt}` }]
      : [{ what: 'Run the generator', how: `${how} Off at bedtime, and while you are asleep.` }];
  }
  const fed = unitsFedBy(generator, household.units); // whose readings start and stop it
  const start = `${readingWords(household.units, fed)} is below ${percentText(run.startBelowFraction)}${bounds}.`;
  const most = run.mostHoursPerDay === undefined ? [] : [`after ${hoursText(run.mostHoursPerDay)} in a day`];
  const whatever = [...stops, ...most];
  const stop = `${allReachedWords(household, fed)} ${percentText(run.stopAboveFraction)}${whatever.length > 0 ? `; whatever the reading ${listed(whatever)}` : ''}.`;
  return byItself
    ? [
        { what: 'The generator starts by itself', how: `When ${start} ${lookAtIt}` },
        { what: 'It stops by itself', how: `When ${stop}` },
      ]
    : [
        { what: 'Start the generator', how: `When ${start}` },
        { what: 'Stop it', how: `When ${stop}` },
      ];
}

function allReachedWords({ units }: HouseholdSpec, fed: readonly Unit[]): string {
  if (fed.length > 1) return 'both batteries have reached';
  return units.length > 1 ? `the battery of ${namesOf(fed)} has reached` : 'it has reached';
}

/** Two legs of 120 V have half each; what more asks for opens its breaker. MODEL.md E4. */
function carriesWords(household: HouseholdSpec, generator: Generator): string {
  const { ratedW, volts, passesThrough } = generator;
  const fed = unitsFedBy(generator, household.units);
  const where = household.units.length > 1 && fed.length === 1 ? `, for ${namesOf(fed)} alone` : '';
  if (!passesThrough) return `It only charges${where}: circuits stay on the batteries.`;
  const most = volts === 240 ? `${ratedW / 2}\u00a0W on each leg` : `${ratedW}\u00a0W in all`;
  const circuits240V = household.circuits.filter(({ leg }) => leg === 'both');
  const makes240V = volts === 240 && fed.length === household.units.length;
  const no240V =
    household.units.length > 1 && circuits240V.length > 0 && !makes240V
      ? ` No 240\u00a0V while it runs: nothing for ${listed(circuits240V.map(({ id, title }) => title ?? id))}.`
      : '';
  return `Circuits run straight off it${where}, with the battery empty too, up to ${most}, less in heat and high up. If its breaker opens, do as after a trip.${no240V}`;
}

/** Fuel on a hot engine burns: off and cooled down first. US Consumer Product Safety Commission, as the caution. */
function refillWords({ tankL, cansL, refuelMinutes, maintenance }: Generator): string {
  const fuel =
    cansL > 0
      ? `${tankL}\u00a0L in the tank when the grid goes, ${cansL}\u00a0L in cans, kept outside the living space.`
      : `${tankL}\u00a0L in the tank when the grid goes, none in cans.`;
  return `${fuel} Before the tank is empty: take the load off it, switch it off, let it cool down, fill it outdoors, away from openings and flames, then start it again${refuelMinutes > 0 ? ` (allow ${minutesText(refuelMinutes)})` : ''}. Service it every ${maintenance.everyHours} running hours.`;
}

function vehicleLines(
  { units, sources }: HouseholdSpec,
  { unit, outletW, during, hoursPerDay, mostWhPerDay, mostWh }: NonNullable<Sources['vehicle']>,
  clock: Clock,
): SourceLine[] {
  const fed = units.filter(({ id }) => id === unit);
  const when = during ? windowsText(during, clock) : 'day and night';
  const hours = hoursPerDay === undefined ? '' : `, the first ${hoursText(hoursPerDay)} of that each day`;
  const most = [
    ...(mostWhPerDay === undefined ? [] : [`${mostWhPerDay / 1000}\u00a0kWh a day`]),
    ...(mostWh === undefined ? [] : [`${mostWh / 1000}\u00a0kWh in the whole outage`]),
  ];
  const limit = most.length > 0 ? `, at most ${listed(most)}` : '';
  const first = [
    ...(sources?.grid ? ['the grid is back'] : []),
    ...(sources?.generator ? ['the generator feeds that unit'] : []),
  ];
  const notWhile = first.length > 0 ? ` Not while ${first.join(' or ')}.` : '';
  return [
    {
      what: 'Plug in the car',
      how: `${when.charAt(0).toUpperCase()}${when.slice(1)}${hours}${limit}, to charge ${units.length > 1 ? namesOf(fed) : 'the battery'} with ${outletW}\u00a0W.${notWhile} ${VEHICLE_CAUTION}`,
    },
  ];
}

/** Live in any light, and light enough to fly: common practice, no source. */
const PANELS_CAUTION =
  'Panels are live in any light: cover them or turn them face down before you plug or unplug, as the unit’s manual says. Tie them down; in storm wind leave them in.';

function panelLines({ units }: HouseholdSpec, clock: Clock): SourceLine[] {
  const out = units.flatMap((unit) =>
    (unit.solar?.arrays ?? []).flatMap(({ peakW, tiltDeg, azimuthDeg, outDuring }) =>
      outDuring === undefined
        ? []
        : [
            `${peakW}\u00a0W${units.length > 1 ? ` for ${namesOf([unit])}` : ''}: out ${windowsText(outDuring, clock)}, facing ${compassWords(azimuthDeg)}, tilted ${tiltDeg}°`,
          ],
    ),
  );
  if (out.length === 0) return [];
  return [{ what: 'Carry panels out', how: `${out.join('. ')}. Then in again. ${PANELS_CAUTION}` }];
}

const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

function compassWords(azimuthDeg: number): string {
  return COMPASS[Math.round(azimuthDeg / 45) % COMPASS.length]!;
}

function namesOf(units: readonly Unit[]): string {
  return listed(units.map(unitName));
}

function batteriesOf(units: readonly Unit[]): string {
  return units.length > 1 ? 'Both batteries' : 'The battery';
}

function hoursText(hours: number): string {
  return counted(hours, 'hour').replace(' ', '\u00a0');
}
