/** One generator through one run: running, wanted, refuelled, serviced. MODEL.md E5. */
import { fuelUsedL } from '../power/fuel-use.ts';
import type { CompiledGenerator } from './household-sources.ts';
import { wantsGenerator, type GeneratorPlan } from '../shedding/generator-plan.ts';

/** Why it stands still although it may be wanted. */
export const READY = 0;
export const REFUELLING = 1;
export const IN_SERVICE = 2;
export const BREAKER_OPEN = 3;
export const NO_FUEL = 4;

export interface GeneratorRun {
  readonly compiled: CompiledGenerator;
  readonly plan: GeneratorPlan;
  running: boolean;
  /** Asked for by the charge, whether or not it may run just now. */
  wanted: boolean;
  /** READY, or what it waits for until `outUntil`. */
  out: number;
  outUntil: number;
  /** Next minute at which it must be thought of whatever happens. */
  nextThought: number;
  /** Since the present stretch of running began, and minutes run in the stretches before it. */
  startedAt: number;
  ranBefore: number;
  /** Local day, and minutes run before it began. */
  day: number;
  ranBeforeToday: number;
  ranAtService: number;
  /** When a service that is due can be done. */
  serviceAt: number;
  /** Litres that have been in the tank so far, and litres in the cans. */
  pouredL: number;
  cansL: number;
  starts: number;
  trips: number;
  /** First moment at which neither tank nor cans held fuel to run on. */
  fuelGoneAt: number;
}

export function startGenerator(compiled: CompiledGenerator, plan: GeneratorPlan): GeneratorRun {
  return {
    compiled,
    plan,
    running: false,
    wanted: false,
    out: READY,
    outUntil: Infinity,
    nextThought: 0,
    startedAt: 0,
    ranBefore: 0,
    day: -1,
    ranBeforeToday: 0,
    ranAtService: 0,
    serviceAt: Infinity,
    pouredL: compiled.spec.tankL,
    cansL: compiled.spec.cansL,
    starts: 0,
    trips: 0,
    fuelGoneAt: Infinity,
  };
}

/** Minutes run from the outage's start to `time`. */
export function generatorMinutes(generator: GeneratorRun, time: number): number {
  return generator.ranBefore + (generator.running ? time - generator.startedAt : 0);
}

/** Litres burnt up to `time`, given what it has delivered. */
export function generatorFuelL(generator: GeneratorRun, time: number, deliveredWmin: number): number {
  return fuelUsedL(generator.compiled.line, generatorMinutes(generator, time) / 60, deliveredWmin / 60_000);
}

/** What it sees when it is thought of, at a whole minute. */
export interface GeneratorReadings {
  minute: number;
  localMinuteOfDay: number;
  localDay: number;
  /** Charge of the emptiest bank that it feeds. */
  lowestCharge: number;
  deliveredWmin: number;
  gridIsOn: boolean;
  /** The reading is one that a person takes (a look, a window's edge); an automatic start needs none. */
  looking: boolean;
  /** First minute from now in which somebody is awake; `minute` itself when they are. */
  nextAwake: number;
}

/**
 * Thinks of the generator: ends what is over, stops it when it must, starts it when it may and is wanted.
 * @returns whether it has started or stopped
 */
export function decideGenerator(generator: GeneratorRun, now: GeneratorReadings): boolean {
  const { plan } = generator;
  if (now.localDay !== generator.day) {
    generator.day = now.localDay;
    generator.ranBeforeToday = generatorMinutes(generator, now.minute);
  }
  if (generator.out !== READY && now.minute >= generator.outUntil) comeBack(generator, now);
  if (!plan.byHand || (now.looking && plan.awake[now.localMinuteOfDay] === 1))
    generator.wanted = wantsGenerator(plan, generator.wanted, now.lowestCharge);
  const before = generator.running;
  stopWithoutFuel(generator, now);
  stopForService(generator, now);
  const may =
    generator.out === READY &&
    plan.allowed[now.localMinuteOfDay] === 1 &&
    !now.gridIsOn &&
    minutesLeftToday(generator, now.minute) >= 1;
  const runs = may && generator.wanted;
  if (runs && !generator.running) start(generator, now.minute);
  else if (!runs && generator.running) stop(generator, now.minute);
  return generator.running !== before;
}

function start(generator: GeneratorRun, minute: number): void {
  generator.running = true;
  generator.startedAt = minute;
  generator.starts++;
}

function stop(generator: GeneratorRun, time: number): void {
  generator.ranBefore += time - generator.startedAt;
  generator.running = false;
}

function minutesLeftToday(generator: GeneratorRun, minute: number): number {
  return generator.plan.mostMinutesPerDay - (generatorMinutes(generator, minute) - generator.ranBeforeToday);
}

function leftL(generator: GeneratorRun, now: GeneratorReadings): number {
  return generator.pouredL - generatorFuelL(generator, now.minute, now.deliveredWmin);
}

/** A tank that would not last another minute stops it; somebody awake fills it while there is fuel in cans. */
function stopWithoutFuel(generator: GeneratorRun, now: GeneratorReadings): void {
  if (generator.out !== READY || leftL(generator, now) >= generator.compiled.mostLPerMinute) return;
  if (generator.running) stop(generator, now.minute);
  if (generator.cansL > 0)
    standStill(generator, REFUELLING, now.nextAwake + atLeastOne(generator.compiled.spec.refuelMinutes));
  else {
    standStill(generator, NO_FUEL, Infinity);
    generator.fuelGoneAt = now.minute;
  }
}

/** A service that is due waits until somebody is awake. */
function stopForService(generator: GeneratorRun, now: GeneratorReadings): void {
  if (generator.out !== READY || minutesToService(generator, now.minute) > 0) return;
  generator.serviceAt = now.nextAwake;
  if (now.nextAwake > now.minute) return;
  if (generator.running) stop(generator, now.minute);
  standStill(generator, IN_SERVICE, now.minute + atLeastOne(generator.compiled.spec.maintenance.minutes));
}

/** A pause of no minutes still ends in the next: in one minute it may be thought of more than once. */
function atLeastOne(minutes: number): number {
  return Math.max(1, minutes);
}

function minutesToService(generator: GeneratorRun, minute: number): number {
  const { everyHours } = generator.compiled.spec.maintenance;
  return 60 * everyHours - (generatorMinutes(generator, minute) - generator.ranAtService);
}

function standStill(generator: GeneratorRun, why: number, until: number): void {
  generator.out = why;
  generator.outUntil = until;
}

function comeBack(generator: GeneratorRun, now: GeneratorReadings): void {
  if (generator.out === REFUELLING) {
    const poured = Math.min(generator.cansL, generator.compiled.spec.tankL - leftL(generator, now));
    generator.cansL -= poured;
    generator.pouredL += poured;
  } else if (generator.out === IN_SERVICE) {
    generator.ranAtService = generatorMinutes(generator, now.minute);
    generator.serviceAt = Infinity;
  }
  generator.out = READY;
  generator.outUntil = Infinity;
}

/** Its breaker opens at `time`: somebody has to reset it. */
export function tripGenerator(generator: GeneratorRun, time: number, resetAt: number): void {
  stop(generator, time);
  generator.trips++;
  standStill(generator, BREAKER_OPEN, resetAt);
}

/**
 * First whole minute after now before which nothing about it is due but a bank's level: a thought, the end of a wait,
 * the day's last minute of running, a service, a tank that could be empty.
 */
export function generatorBreak(generator: GeneratorRun, minute: number, deliveredWmin: number): number {
  const { nextThought, outUntil, serviceAt, compiled } = generator;
  let next = Math.min(nextThought, outUntil, generator.out === READY ? serviceAt : Infinity);
  if (!generator.running) return next;
  next = Math.min(next, minute + Math.max(1, Math.floor(minutesLeftToday(generator, minute))));
  const toService = minutesToService(generator, minute);
  if (toService > 0) next = Math.min(next, minute + Math.ceil(toService));
  const left = generator.pouredL - generatorFuelL(generator, minute, deliveredWmin);
  // a hair less than the quotient, so that rounding cannot let a block run past the minute in which the tank is empty
  return Math.min(next, minute + Math.max(1, Math.floor(left / compiled.mostLPerMinute - 1e-9)));
}
