/** Figures of the household that nobody measured: where in their range a draw has them. MODEL.md §18.1. */
import type { Streams } from '../../chance/streams.ts';
import type { SiteSpec, UnitSpec } from '../../scenario/schema.ts';
import type { UnknownsSpec } from '../../scenario/schema-unknowns.ts';
import type { Variation } from '../../trials/vary-study.ts';

type Range = readonly [low: number, high: number];

const HEALTH_MARGIN = 0.05;
const IDLE_MARGIN = 0.25; // share of what is stated

export const healthRange = (unknowns: UnknownsSpec, { battery }: UnitSpec): Range =>
  unknowns.healthFraction ?? [
    Math.max(0.1, battery.healthFraction - HEALTH_MARGIN),
    Math.min(1, battery.healthFraction + HEALTH_MARGIN),
  ];

export const idleRange = (unknowns: UnknownsSpec, { inverter }: UnitSpec): Range =>
  unknowns.idleW ?? [inverter.idleW * (1 - IDLE_MARGIN), inverter.idleW * (1 + IDLE_MARGIN)];

/** The purposes of their streams. One number each, for all units alike: they were bought and have aged together. */
export const VALUE_PURPOSES = {
  health: 'input/health',
  idle: 'input/idle',
  efficiency: 'input/efficiency',
  panelLoss: 'input/panel-loss',
  rooms: 'input/rooms',
} as const;

/** What a draw's streams say of the household: every value at its place in its range. */
export function variationOf(unknowns: UnknownsSpec, streams: Streams): Variation {
  const place = (name: keyof typeof VALUE_PURPOSES) => streams(VALUE_PURPOSES[name])();
  const [health, idle, efficiency] = [place('health'), place('idle'), place('efficiency')];
  const [panelLoss, rooms] = [place('panelLoss'), place('rooms')];
  return {
    unit: (unit) => ({
      ...unit,
      inverter: { ...unit.inverter, idleW: at(idleRange(unknowns, unit), idle) },
      battery: {
        ...unit.battery,
        healthFraction: at(healthRange(unknowns, unit), health),
        module: withEfficiency(unit.battery.module, unknowns, efficiency),
      },
      solar: unit.solar && withPanelLoss(unit.solar, unknowns, panelLoss),
    }),
    site: (site) => withRooms(site, unknowns, rooms),
  };
}

function withEfficiency(
  module: UnitSpec['battery']['module'],
  { oneWayEfficiency }: UnknownsSpec,
  place: number,
): UnitSpec['battery']['module'] {
  if (oneWayEfficiency === undefined) return module;
  const efficiency = at(oneWayEfficiency, place);
  return { ...module, chargeEfficiency: efficiency, dischargeEfficiency: efficiency };
}

function withPanelLoss(
  solar: NonNullable<UnitSpec['solar']>,
  { panelLossFraction }: UnknownsSpec,
  place: number,
): NonNullable<UnitSpec['solar']> {
  if (panelLossFraction === undefined) return solar;
  const lossFraction = at(panelLossFraction, place);
  return { ...solar, arrays: solar.arrays.map((array) => ({ ...array, lossFraction })) };
}

function withRooms(site: SiteSpec, { indoorFollowsFraction }: UnknownsSpec, place: number): SiteSpec {
  if (indoorFollowsFraction === undefined) return site;
  return { ...site, indoorFollowsFraction: at(indoorFollowsFraction, place) };
}

function at([low, high]: Range, place: number): number {
  return low + place * (high - low);
}
