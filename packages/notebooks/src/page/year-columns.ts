/** What is changed across the year's heat map: how many battery modules, or how much solar. */
import type { Scenario } from '@rideout/sim';
import type { YearColumn } from '../charts/year-cells.ts';
import { changedScenario } from './changed-scenario.ts';
import { modulesWords } from './modules-everywhere.ts';
import type { RunSettings } from './page-settings.ts';

export type Across = 'modules' | 'solar';

export const ACROSS: readonly Across[] = ['modules', 'solar'];

export interface ChangedColumn extends YearColumn {
  /** For a scenario of one household. */
  readonly change: (scenario: Scenario, run: RunSettings) => Scenario;
}

type Household = Scenario['alternatives'][number]['household'];

const MOST_TRIED = 4;
const SCALES = [0, 0.5, 1, 1.5, 2];

export function acrossTitle(across: Across): string {
  return across === 'modules' ? 'Battery modules on each unit' : 'Solar panels, against those in the file';
}

export function yearColumns(household: Household, across: Across): ChangedColumn[] {
  return across === 'modules' ? moduleColumns(household) : SCALES.map(solarColumn);
}

export function hasSolar({ units }: Household): boolean {
  return units.some((unit) => (unit.solar?.arrays.length ?? 0) > 0);
}

/** One to four on each unit, and the household's own number; units that differ have a column as they are. */
function moduleColumns({ units }: Household): ChangedColumn[] {
  const numbers = [...new Set(units.map((unit) => unit.battery.modules))];
  const own = numbers.length === 1 ? numbers[0]! : undefined;
  const tried = new Set(Array.from({ length: MOST_TRIED }, (_, i) => i + 1));
  if (own !== undefined) tried.add(own);
  const columns = [...tried].sort((a, b) => a - b).map((modules) => moduleColumn(modules, modules === own));
  return own === undefined ? [asItIs(numbers), ...columns] : columns;
}

function moduleColumn(modules: number, own: boolean): ChangedColumn {
  return {
    id: `modules-${modules}`,
    label: String(modules),
    words: modulesWords(modules),
    own,
    change: (scenario, run) => changedScenario(scenario, own ? run : { ...run, modulesPerUnit: modules }),
  };
}

function asItIs(numbers: readonly number[]): ChangedColumn {
  return {
    id: 'as-it-is',
    label: 'as is',
    words: `the battery modules in the file (${numbers.join(' and ')})`,
    own: true,
    change: changedScenario,
  };
}

function solarColumn(scale: number): ChangedColumn {
  return {
    id: `solar-${scale}`,
    label: scale === 0 ? 'none' : `${scale}\u00a0×`,
    words:
      scale === 0
        ? 'no solar panels'
        : scale === 1
          ? 'the solar panels in the file'
          : `${scale} times the solar panels`,
    own: scale === 1,
    change: (scenario, run) => changedScenario(scale === 1 ? scenario : withSolar(scenario, scale), run),
  };
}

/** Nameplate watts times `scale`; the units' solar input limits stay, so more panels may only be clipped. */
function withSolar(scenario: Scenario, scale: number): Scenario {
  const scaled = (unit: Household['units'][number]) => {
    if (!unit.solar) return unit;
    const { solar, ...without } = unit;
    if (scale === 0) return without;
    const arrays = solar.arrays.map((array) => ({ ...array, peakW: array.peakW * scale }));
    return { ...unit, solar: { ...solar, arrays } };
  };
  return {
    ...scenario,
    alternatives: scenario.alternatives.map(({ household, ...rest }) => ({
      ...rest,
      household: { ...household, units: household.units.map(scaled) },
    })),
  };
}
