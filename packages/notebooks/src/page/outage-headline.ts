/** One outage in one sentence, and what it was like. */
import { atLeastThisLong } from '@rideout/sim';
import { clockText, longDateText, momentText } from '../charts/local-clock.ts';
import { degreesText } from '../charts/look.ts';
import { minuteBuckets } from '../charts/minute-buckets.ts';
import type { OutageView } from '../charts/outage-view.ts';
import { sourceSentences, sourceTotals } from '../charts/source-totals.ts';
import { html } from '../elements.ts';

export function outageHeadline(
  outage: OutageView,
  titles: { strategy: string; household: string },
): HTMLElement {
  const { trace, clock } = outage;
  const { runtimeMinutes, minutes } = trace;
  const all = atLeastThisLong(minutes / 1440);
  const held =
    runtimeMinutes === null ? `all ${all} that were simulated` : atLeastThisLong(runtimeMinutes / 1440);
  const outdoors = minuteBuckets(trace.dryBulbC, 0, minutes, 1)[0]!;
  const degrees = (c: number) => degreesText(c, outage);
  const until = runtimeMinutes === null ? '' : ` until ${momentText(trace, runtimeMinutes, clock)}`;
  return html`<div class="headline">
    <p class="answer">
      In outage ${trace.draw} the essentials hold for <strong>${held}</strong> with “${titles.strategy}”.
    </p>
    <p class="soft">
      The grid fails on ${longDateText(trace, 0)} at ${clockText(trace, 0, clock)}; the essentials
      hold${until || ' to the end'}. Outdoors ${degrees(outdoors.min)} to ${degrees(outdoors.max)}. The panels
      could give ${solarWords(outage)} in ${all}. ${sourcesWords(outage)}Household: ${titles.household}.
    </p>
  </div>`;
}

/** What came in besides the sun, over the whole outage. */
function sourcesWords({ trace, household }: OutageView): string {
  return sourceSentences(sourceTotals(trace, 0, trace.minutes), household)
    .map((sentence) => `${sentence} `)
    .join('');
}

function solarWords({ trace }: OutageView): string {
  const sum = (values: Float64Array) => values.reduce((total, watts) => total + watts, 0);
  const kWh = trace.units.reduce((total, unit) => total + sum(unit.solarAvailableW), 0) / 60_000;
  return `${kWh.toFixed(0)}\u00a0kWh`;
}
