import type { HouseholdSpec } from '../scenario/scenario.ts';

/** The sources of a household told back, a line each; none without. */
export function describeSources({ sources }: Pick<HouseholdSpec, 'sources'>): string[] {
  const { generator, grid, vehicle } = sources ?? {};
  return [
    ...(generator === undefined
      ? []
      : [
          `  generator ${generator.ratedW} W at ${generator.volts} V, ${generator.fuel}, ${generator.tankL} L in the tank and ${generator.cansL} L in cans; started ${generator.starts === 'hand' ? 'by hand' : 'by itself'}`,
        ]),
    ...(grid === undefined
      ? []
      : [`  grid      comes back for about ${grid.onHours} h after about ${grid.offHours} h without`]),
    ...(vehicle === undefined ? [] : [`  vehicle   ${vehicle.outletW} W into ${vehicle.unit}`]),
  ];
}
