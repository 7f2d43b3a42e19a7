/** Modules in the cold: less to draw, nothing to charge. */
import { drawableFraction } from '../../power/cold.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { listed } from '../../trials/listed.ts';
import { inC, inPercent } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

/** Below this share the cold is worth a line. */
const NOTED_FRACTION = 0.9;
const TODO =
  'Insulate their place, move them indoors where your code allows it, or choose modules with a heater.';

export const coldModules: CheckSubjectSpec = {
  id: 'cold-modules',
  title: 'Modules in the cold',
  look: (context) =>
    joinOutcomes(
      alike(context.household.units).flatMap((units) => [
        asWatched(context, units),
        atRecordLow(context, units),
      ]),
    ),
};

/** Units whose modules stand in the same place and bear the same cold, told together. */
function alike(units: readonly UnitSpec[]): UnitSpec[][] {
  const kinds = new Map<string, UnitSpec[]>();
  for (const unit of units) {
    const { place, minChargeC, coldCapacity } = unit.battery;
    const kind = JSON.stringify([place, minChargeC, coldCapacity]);
    kinds.set(kind, [...(kinds.get(kind) ?? []), unit]);
  }
  return [...kinds.values()];
}

const whose = (units: readonly UnitSpec[]) =>
  `The modules of ${listed(units.map((u) => u.id))} (${units[0]!.battery.place})`;

function asWatched({ observed }: CheckContext, units: readonly UnitSpec[]): Partial<CheckOutcome> {
  const { id, battery } = units[0]!;
  const { lowestPlaceC, tooColdToChargeHoursFraction: cold } = observed.units.find((u) => u.id === id)!;
  const drawable = drawableFraction(battery.coldCapacity, lowestPlaceC);
  const numbers = [
    { what: 'lowest around the modules', value: lowestPlaceC, unit: '°C' },
    { what: 'no charging below', value: battery.minChargeC, unit: '°C' },
    { what: 'time below it', value: cold * 100, unit: '%' },
    { what: 'share that can be drawn', value: drawable * 100, unit: '%' },
  ];
  const draft = { where: placesOf(units), numbers, todo: TODO, rule: CHECK_RULES.cold };
  if (cold > 0)
    return looked({
      ...draft,
      severity: 'watch',
      found: `${whose(units)} were below ${inC(battery.minChargeC)}, where they take no charge, for ${inPercent(cold)} of the time watched; the lowest was ${inC(lowestPlaceC)}.`,
    });
  if (drawable >= NOTED_FRACTION) return looked();
  return looked({
    ...draft,
    severity: 'note',
    found: `${whose(units)} came down to ${inC(lowestPlaceC)} in the outages watched: then ${inPercent(drawable)} of their energy can be drawn.`,
  });
}

const placesOf = (units: readonly UnitSpec[]) => units.map((u) => `units.${u.id}.battery.place`).join(', ');

/** Where the place settles when the record low lasts: rooms, or halfway between rooms and outdoors (MODEL.md U11). */
function settledC({ site }: Scenario, place: UnitSpec['battery']['place'], outdoorC: number): number {
  const rooms = site.indoorC + site.indoorFollowsFraction * (outdoorC - site.indoorC);
  if (place === 'indoors') return rooms;
  return place === 'garage' ? (rooms + outdoorC) / 2 : outdoorC;
}

function atRecordLow(
  { scenario, observed }: CheckContext,
  units: readonly UnitSpec[],
): Partial<CheckOutcome> {
  const { recordLowC } = scenario.site;
  const { battery } = units[0]!;
  if (recordLowC === undefined)
    return battery.place === 'indoors'
      ? {}
      : unknown(
          placesOf(units),
          'no record low given: the modules were looked at in the weather watched only',
          'site.recordLowC',
        );
  const c = settledC(scenario, battery.place, recordLowC);
  if (c >= battery.minChargeC || recordLowC >= observed.lowestOutdoorC) return looked();
  return looked({
    severity: 'note',
    where: placesOf(units),
    found: `In a spell at the site’s record low of ${inC(recordLowC)} their place would settle near ${inC(c)}: below ${inC(battery.minChargeC)} the modules of ${listed(units.map((u) => u.id))} take no charge, and ${inPercent(drawableFraction(battery.coldCapacity, c))} of their energy can be drawn.`,
    numbers: [
      { what: 'record low', value: recordLowC, unit: '°C' },
      { what: 'around the modules', value: c, unit: '°C' },
      { what: 'no charging below', value: battery.minChargeC, unit: '°C' },
    ],
    todo: TODO,
    rule: CHECK_RULES.cold,
  });
}
