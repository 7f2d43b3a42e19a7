/**
 * The first alternative and another, season by season: time that nine outages in ten reach.
 *
 * Observable Plot: the strips of "what changes", a season in the place of a strategy.
 */
import { atLeastThisLong, limitCells, reachCell, type StudySummary } from '@rideout/sim';
import { comparison, verdictOf, type Comparison } from './alternatives-comparison.ts';
import { cellColumns } from './cell-columns.ts';
import type { ToldProvenance } from './changes-sentence.ts';
import { chartFrame } from './chart-frame.ts';
import { deciderWords } from './decider-words.ts';
import { gainSentence, gainText } from './gain-words.ts';
import { tooFewEnding } from './outage-count.ts';
import { intervalKey } from './series-key.ts';
import { linesOf, strips } from './what-changes.ts';

export interface Season {
  readonly title: string;
  readonly summary: StudySummary;
}

export interface SeasonGainsOptions {
  readonly alternativeId: string;
  readonly strategyId: string;
  /** Of the study whose seasons these are. */
  readonly provenance: ToldProvenance;
  /** Picture width, px. */
  readonly width: number;
}

export interface ComparedSeason {
  readonly season: string;
  readonly compared: Comparison;
}

/** Seasons that hold such a pair, in the order given. */
export function comparedSeasons(
  seasons: readonly Season[],
  { alternativeId, strategyId }: Pick<SeasonGainsOptions, 'alternativeId' | 'strategyId'>,
): ComparedSeason[] {
  return seasons.flatMap(({ title, summary }) => {
    const compared = comparison(summary, alternativeId, strategyId);
    return compared ? [{ season: title, compared }] : [];
  });
}

export function seasonGains(seasons: readonly Season[], options: SeasonGainsOptions): HTMLElement {
  const rows = comparedSeasons(seasons, options);
  const study = oneStudy(rows, seasons, options.provenance);
  const lines = linesOf(study, undefined);
  return chartFrame({
    id: 'season-gains',
    title: seasonsFinding(rows),
    note: `Time that nine outages in ten reach when the outage begins in these months, with “${rows[0]?.compared.first.strategyTitle ?? ''}”. Bars: 95\u00a0% interval. An arrow: as long as was simulated, or longer. From ${study.provenance.draws} outages a season.`,
    picture: strips(lines, study.horizonDays, options.width),
    key: lines.slice(0, 2).map(({ style, summary }) => ({
      sample: intervalKey(style),
      text: summary.alternativeTitle,
    })),
    sentences: rows.map(
      ({ season, compared }) => `${season}: ${gainSentence(compared)} It ${deciderWords(compared)}.`,
    ),
    table: {
      caption:
        'Time that nine outages in ten reach, with 95 % intervals, and the gain over the same outages.',
      columns: [
        { name: 'Outage begins in' },
        { name: 'Household' },
        { name: 'Reached', number: true },
        { name: 'From', number: true },
        { name: 'To', number: true },
        { name: 'Gain' },
      ],
      rows: rows.flatMap(({ season, compared }) =>
        [compared.first, compared.second].map((s, i) => [
          season,
          s.alternativeTitle,
          reachCell(s.nineInTenDays.value, study.horizonDays),
          limitCells(s.nineInTenDays, study.horizonDays).low,
          limitCells(s.nineInTenDays, study.horizonDays).high,
          i === 0 ? '' : gainText(compared),
        ]),
      ),
      exact: rows.flatMap(({ season, compared: { first, second, gain } }) =>
        [first, second].map((s, i) => ({
          season,
          ...cellColumns(s),
          draws: s.draws,
          nineInTenDays: s.nineInTenDays.value,
          low: s.nineInTenDays.low,
          high: s.nineInTenDays.high,
          gainDays: i === 0 ? null : gain.nineInTenDays.value,
          gainLow: i === 0 ? null : gain.nineInTenDays.low,
          gainHigh: i === 0 ? null : gain.nineInTenDays.high,
        })),
      ),
    },
    provenance: study.provenance,
  });
}

/** The seasons as one study whose strategies they are: what the strips are drawn from. */
function oneStudy(
  rows: readonly ComparedSeason[],
  seasons: readonly Season[],
  provenance: ToldProvenance,
): StudySummary {
  const { horizonDays } = seasons[0]!.summary;
  const draws = Math.min(...seasons.map((s) => s.summary.provenance.draws));
  return {
    horizonDays,
    provenance: { ...provenance, draws },
    differences: [],
    strategies: rows.flatMap(({ season, compared }) =>
      [compared.first, compared.second].map((s) => ({ ...s, strategyId: season, strategyTitle: season })),
    ),
  };
}

/** What the chart shows, in a sentence without its full stop: a season that the horizon hides is not one without a gain. */
export function seasonsFinding(rows: readonly ComparedSeason[]): string {
  const [first] = rows;
  if (!first) return 'No season has been worked out yet';
  const seasonsOf = (verdict: ReturnType<typeof verdictOf>) =>
    rows.filter(({ compared }) => verdictOf(compared) === verdict);
  const listed = (some: readonly ComparedSeason[]) => some.map(({ season }) => season).join(' and in ');
  const [gains, losses, level] = [seasonsOf('longer'), seasonsOf('shorter'), seasonsOf('no difference')];
  const hidden = seasonsOf('hidden by the horizon');
  const told = [
    ...(gains.length > 0 ? [gainsWords(gains, rows.length)] : []),
    ...(losses.length > 0 ? [`lasts less long in ${listed(losses)}`] : []),
    ...(level.length > 0 ? [`shows no clear gain in ${listed(level)}`] : []),
  ];
  const { second, horizonDays } = first.compared;
  const name = `“${second.alternativeTitle}”`;
  const both =
    hidden.length > 0
      ? `${told.length > 0 ? 'in' : 'In'} ${listed(hidden)} nine outages in ten last all ${atLeastThisLong(horizonDays)} simulated with both`
      : '';
  const draws = Math.min(...rows.map(({ compared }) => compared.first.draws));
  const own = told.length > 0 ? `${name} ${told.join(', ')}` : '';
  return [own, both].filter((part) => part !== '').join('; ') + tooFewEnding(draws);
}

function gainsWords(gains: readonly ComparedSeason[], seasons: number): string {
  const size = ({ compared }: ComparedSeason) => compared.gain.nineInTenDays.value ?? Infinity;
  const told = ({ season, compared }: ComparedSeason) => `in ${season} (${gainText(compared)})`;
  const bySize = [...gains].sort((a, b) => (size(a) === size(b) ? 0 : size(a) - size(b)));
  const [least, most] = [bySize[0]!, bySize.at(-1)!];
  if (gains.length === 1) return `gains ${told(least)}`;
  if (gainText(least.compared) === gainText(most.compared)) {
    const where =
      gains.length === seasons
        ? 'every season worked out so far'
        : gains.map((r) => r.season).join(' and in ');
    return `gains in ${where} (${gainText(most.compared)})`;
  }
  return `gains least ${told(least)} and most ${told(most)}`;
}
