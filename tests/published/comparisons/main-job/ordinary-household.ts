/** An ordinary home, and a pair that carries all of it. */
import { appliance, circuit, unit3kW, type Circuit, type Unit } from './household.ts';

/** Everything an ordinary home runs but central heating: tier 1 essentials, tiers 2 and 3 the day, tier 4 the heavy things. */
export const ORDINARY_HOME: readonly Circuit[] = [
  circuit('fridge', 'L1', 1, appliance('refrigerator')),
  circuit('talk', 'L2', 1, appliance('modem-router'), appliance('phone-charging', { count: 3 })),
  circuit('lights', 'L1', 1, appliance('lights-led')),
  circuit('furnace', 'L2', 1, appliance('furnace-blower-ecm')),
  circuit('freezer', 'L1', 2, appliance('freezer-chest')),
  circuit('more-lights', 'L2', 2, appliance('lights-led', { count: 2 })),
  circuit(
    'kitchen',
    'L1',
    3,
    ...['microwave', 'kettle', 'coffee-maker', 'toaster'].map((id) => appliance(id)),
  ),
  circuit(
    'living',
    'L2',
    3,
    appliance('television', { count: 2 }),
    appliance('laptop', { count: 2 }),
    appliance('desktop-computer'),
  ),
  circuit('dishwasher', 'L1', 3, appliance('dishwasher')),
  circuit('washer', 'L2', 3, appliance('clothes-washer')),
  circuit('small-things', 'L2', 3, { kind: 'steady', runningW: 60 }),
  circuit('bathroom', 'L1', 3, appliance('hair-dryer')),
  circuit('water-heater', 'both', 4, appliance('water-heater')),
  circuit('range', 'both', 4, appliance('range-top'), appliance('oven')),
  circuit('dryer', 'both', 4, appliance('dryer-electric')),
  circuit('cool', 'L2', 4, appliance('room-air-conditioner-12000')),
  circuit('cool-too', 'L1', 4, appliance('room-air-conditioner-8000')),
];

/** A pair that no load of an ordinary home trips, so that energy alone decides. */
export const strongPair = (bankWh: number): Unit[] =>
  (['L1', 'L2'] as const).map((leg) => ({
    ...unit3kW(leg.toLowerCase(), leg),
    inverter: { continuousW: 10_000, surgeW: 30_000, overloadMinutes: 5, idleW: 28, lossPerW: 0.035 },
    battery: {
      module: { capacityWh: bankWh, maxChargeW: 5000, maxDischargeW: 20_000 },
      startFraction: 1,
      cutOffFraction: 0,
      restartFraction: 0.05,
    },
  }));
