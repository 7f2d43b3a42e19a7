import type {
  GeneratorSummary,
  SourcesSummary,
  StrategySummary,
  StudySummary,
} from '../trials/study-summary.ts';
import { reachText } from '../trials/days-in-words.ts';
import { byAlternative } from './by-alternative.ts';
import { paragraph } from './render-lines.ts';
import type { Style, TerminalLook } from './render-style.ts';

/** What came back besides the panels: a line or two per strategy of each version that has a source; none without. */
export function sourceLines(summary: StudySummary, look: TerminalLook, style: Style): string[] {
  return byAlternative(summary.strategies).flatMap((group) => {
    const { sources, alternativeTitle } = group[0]!;
    if (sources === undefined) return [];
    const recharge = rechargeSentence(sources);
    return [
      ...paragraph(alternativeTitle, look.width).map(style.heading),
      ...group.flatMap((strategy) =>
        paragraph(`${strategy.strategyTitle}: ${told(strategy, summary.horizonDays)}.`, look.width, '- '),
      ),
      ...(recharge === '' ? [] : paragraph(recharge, look.width, '  ').map(style.quiet)),
    ];
  });
}

function told({ sources }: StrategySummary, horizonDays: number): string {
  const { sourceInKWh, gridHours, generator } = sources!;
  return [
    `${sourceInKWh.toFixed(1)}\u00a0kWh came in`,
    ...(gridHours > 0 ? [`${gridHours.toFixed(1)}\u00a0hours of grid`] : []),
    ...(generator === undefined ? [] : generatorParts(generator, horizonDays)),
  ].join(', ');
}

function generatorParts(generator: GeneratorSummary, horizonDays: number): string[] {
  const { hours, starts, trips, fuelL, fuelOnHandL, nineInTenFuelDays, medianFuelDays } = generator;
  if (starts === 0) return ['the generator never ran'];
  const perDay = hours / horizonDays;
  return [
    `generator ${hours.toFixed(1)}\u00a0hours (${perDay.toFixed(1)} a day) in ${starts.toFixed(1)} runs`,
    ...(trips > 0 ? [`its breaker open ${trips.toFixed(1)} times`] : []),
    `${fuelL.toFixed(1)} of ${fuelOnHandL}\u00a0L burnt`,
    `fuel for ${reachText(nineInTenFuelDays.value, horizonDays)} in nine outages of ten, ${reachText(medianFuelDays.value, horizonDays)} in half`,
  ];
}

function rechargeSentence({ recharge }: SourcesSummary): string {
  const { gridHours, generatorHours, vehicleHours } = recharge;
  const ways = [
    ...rechargeWay(gridHours, 'on the grid'),
    ...rechargeWay(generatorHours, 'on the generator'),
    ...rechargeWay(vehicleHours, 'plugged into the vehicle'),
  ];
  return ways.length === 0 ? '' : `From cut-off to full, nothing drawn and no sun: ${ways.join(', ')}.`;
}

function rechargeWay(hours: number | null, way: string): string[] {
  if (hours === null) return [];
  return [hours === Infinity ? `never ${way}` : `${hours.toFixed(1)}\u00a0hours ${way}`];
}
