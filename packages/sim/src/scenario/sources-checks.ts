/** What the keys of generators, vehicles and portable panels cannot tell alone. */
import { minutesInWindows } from '../clock/clock-windows.ts';
import { planGenerator } from '../shedding/generator-plan.ts';
import type { Report } from './cross-check-report.ts';
import type { Path } from './located-document.ts';
import { meantHint } from './nearest.ts';
import type { GeneratorRunSpec, GeneratorSpec } from './schema-sources.ts';
import type { CheckedScenario } from './schema.ts';

type Read = Pick<CheckedScenario, 'sources' | 'units' | 'person' | 'strategies' | 'alternatives' | 'ladder'>;

/** Reports through the caller's `report` in the manner of `crossCheck`. */
export function checkSources(scenario: Read, report: Report): void {
  const { sources, units } = scenario;
  checkPortablePanels(scenario, report);
  checkVehicle(scenario, report);
  if (sources?.generator === undefined) checkNobodysGenerator(scenario, report);
  else {
    checkFeeds(units, sources.generator, report);
    checkRuns(scenario, sources.generator, report);
  }
}

function checkPortablePanels({ units, person }: Read, report: Report): void {
  const awake = minutesInWindows([person.awake]);
  units.forEach(({ solar }, u) =>
    solar?.arrays.forEach(({ outDuring }, a) => {
      if (
        outDuring === undefined ||
        minutesInWindows(outDuring).every((out, m) => out === 0 || awake[m] === 1)
      )
        return;
      report(
        ['units', u, 'solar', 'arrays', a, 'outDuring'],
        `windows within person.awake, ${person.awake}: somebody has to put them out and take them in`,
      );
    }),
  );
}

function checkVehicle({ sources, units }: Read, report: Report): void {
  const ids = units.map((u) => u.id);
  const unit = sources?.vehicle?.unit;
  if (unit !== undefined && !ids.includes(unit))
    report(['sources', 'vehicle', 'unit'], 'the id of a unit', meantHint(unit, ids));
}

/** Where no version of the household, nor a step of the ladder, has a generator, a strategy that runs one is a slip. */
function checkNobodysGenerator({ strategies, alternatives, ladder }: Read, report: Report): void {
  const somebodyHasOne = [...alternatives, ...(ladder?.steps ?? [])].some(({ change }) =>
    Object.keys(change ?? {}).some((path) => path === 'sources' || path.startsWith('sources.generator')),
  );
  if (somebodyHasOne) return;
  strategies.forEach(({ generator }, s) => {
    if (generator !== undefined && generator.by !== 'never')
      report(['strategies', s, 'generator'], 'a generator under sources to run', undefined, 'no generator');
  });
}

function checkFeeds(
  units: CheckedScenario['units'],
  { feeds, ratedW, surgeW }: GeneratorSpec,
  report: Report,
): void {
  const ids = units.map((u) => u.id);
  const at = ['sources', 'generator'];
  if (surgeW !== undefined && surgeW < ratedW) report([...at, 'surgeW'], `at least ratedW, ${ratedW}`);
  if (feeds === undefined && units.every((u) => u.charger === undefined)) {
    report(
      at,
      'a unit with a charger for it to feed',
      'Give a unit charger: { maxW: … }, the watts it takes from its AC input.',
      'a generator, and no unit with a charger',
    );
  }
  feeds?.forEach((id, i) => {
    const u = ids.indexOf(id);
    if (u < 0) report([...at, 'feeds', i], 'the id of a unit', meantHint(id, ids));
    else if (units[u]!.charger === undefined)
      report(['units', u, 'charger'], 'charger: { maxW: … }, since the generator feeds this unit');
  });
}

/** Every way it may be run: the household's, and each strategy's own. */
function checkRuns({ person, strategies }: Read, generator: GeneratorSpec, report: Report): void {
  const check = (run: GeneratorRunSpec, path: Path): void => {
    const plan = planGenerator(run, generator, person);
    if (plan === undefined) return;
    const hours = plan.allowed.reduce((sum, may) => sum + may, 0) / 60;
    const left = `outside the quiet hours${plan.byHand ? ' and while somebody is awake to run it' : ''}`;
    if (hours === 0)
      report(path, `some time of the day ${left}`, undefined, 'a generator that may never run');
    else if (run.by === 'hours' && run.hoursPerDay > hours)
      report(
        [...path, 'hoursPerDay'],
        `at most ${Math.round(hours * 100) / 100}: so many hours are left ${left}`,
      );
  };
  check(generator.run, ['sources', 'generator', 'run']);
  strategies.forEach((strategy, s) => {
    if (strategy.generator !== undefined) check(strategy.generator, ['strategies', s, 'generator']);
  });
}
