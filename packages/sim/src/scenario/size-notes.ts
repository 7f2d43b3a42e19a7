/** Sizes that no household has: kilowatts written where watts are meant. */
import type { HouseholdSpec } from './scenario.ts';

type Units = HouseholdSpec['units'];

/** Smaller than anything a house is backed up with. Common practice, no source. */
const LEAST = { continuousW: 50, capacityWh: 50, peakW: 5 } as const;

/** What a person should look at twice, in sentences. */
export function sizeNotes(units: Units): string[] {
  return units.flatMap(({ id, inverter, battery, solar }) => [
    ...note(`units.${id}.inverter`, 'continuousW', inverter.continuousW, 'kilowatts'),
    ...note(`units.${id}.battery.module`, 'capacityWh', battery.module.capacityWh, 'kilowatt-hours'),
    ...(solar?.arrays ?? []).flatMap((array, i) =>
      note(`units.${id}.solar.arrays.${i}`, 'peakW', array.peakW, 'kilowatts'),
    ),
  ]);
}

function note(path: string, key: keyof typeof LEAST, value: number, meant: string): string[] {
  if (value >= LEAST[key]) return [];
  return [
    `${path}.${key}: ${value} ${key.endsWith('Wh') ? 'Wh' : 'W'} is very little; if ${meant} were meant, write ${Number((value * 1000).toPrecision(12))}.`,
  ];
}
