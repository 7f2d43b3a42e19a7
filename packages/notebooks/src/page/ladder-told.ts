/** What to buy next in one sentence; what was left, and how it was chosen. */
import {
  clearRungs,
  gainLength,
  intervalText,
  reachText,
  type LadderAnswer,
  type LadderRung,
} from '@rideout/sim';
import { drawsToTell, ENDED, moneyText, restWords, rungGain, shareWords } from '../charts/ladder-words.ts';
import { tooFewNote } from '../charts/outage-count.ts';
import { html } from '../elements.ts';

export function ladderHeadline(answer: LadderAnswer): HTMLElement {
  const { start, rungs, horizonDays } = answer;
  const reach = (stand: LadderAnswer['start']) => reachText(stand.days.value, horizonDays);
  if (rungs.length === 0)
    return html`<div class="headline">
      <p class="answer">No step was found to gain anything.</p>
      <p class="soft">
        ${shareWordsCapital(answer)} reach ${reach(start)} from
        “${start.title}”.${tooFewNote(drawsToTell(answer))}
      </p>
    </div>`;
  const next = rungs.find((rung) => rung.price > 0);
  const free = rungs.slice(0, next ? rungs.indexOf(next) : rungs.length);
  return html`<div class="headline">
    <p class="answer">${free.length > 0 ? freeWords(free) : ''} ${next ? buyWords(next, answer) : ''}</p>
    <p class="soft">
      From “${start.title}” ${shareWords(answer.confidence)} reach ${reach(start)}${upTo(answer)}.
      ${ENDED[answer.ended]}${tooFewNote(drawsToTell(answer))}
    </p>
  </div>`;
}

/** As far as the gain of every figure is clear. */
function upTo(answer: LadderAnswer): string {
  const { rungs, horizonDays } = answer;
  const clear = clearRungs(rungs);
  const end = clear.at(-1);
  if (end === undefined) return '; no rung clearly lengthens that';
  const up = clear.length;
  const interval = intervalText(end.days, horizonDays);
  return `; after ${up === 1 ? 'the first rung' : `${up} rungs`}, for ${moneyText(end.paid, answer)} in all, ${reachText(end.days.value, horizonDays)} (${interval})${restWords(rungs.length - up)}`;
}

function shareWordsCapital({ confidence }: LadderAnswer): string {
  const words = shareWords(confidence);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function freeWords(rungs: readonly LadderRung[]): string {
  return `At no cost: ${rungs.map((rung) => `“${rung.title}” (${rungGain(rung)})`).join(', ')}.`;
}

function buyWords(rung: LadderRung, answer: LadderAnswer): readonly (string | HTMLElement)[] {
  return [
    'Buy next: ',
    html`<strong>${rung.title}</strong>`,
    `, ${moneyText(rung.price, answer)} (${rungGain(rung)}).`,
  ];
}

/** Steps not taken, the check by every combination, and how the order was chosen. */
export function ladderNotes(answer: LadderAnswer): HTMLElement {
  const { left, all, provenance, takenBack, horizonDays } = answer;
  return html`<section aria-labelledby="ladder-notes-title">
    <h2 id="ladder-notes-title">What was left, and how it was chosen</h2>
    ${
      left.length > 0
        ? html`<ul>
            ${left.map((step) => html`<li>${step.title}, ${moneyText(step.price, answer)}: ${step.why}.</li>`)}
          </ul>`
        : ''
    }
    ${takenBack.map(
      ({ title, gainDays }) =>
        html`<p>
          Chosen, then taken back: “${title}”. On other outages it loses
          ${gainDays.value === null ? 'time' : gainLength(gainDays.value)}.
        </p>`,
    )}
    <p>
      The order was chosen on ${provenance.choosingDraws} outages, step by step, each time by the days gained
      for the money; every figure above is from other outages, so that luck in choosing does not flatter it.
      ${
        all === null
          ? ''
          : ` All ${all.combinations} combinations of steps were looked at too: none for no more money was ahead of a rung${all.mostBehindDays > 0 ? ` by more than ${reachText(all.mostBehindDays, horizonDays)}` : ''} on the outages that chose it.`
      }
      Prices are those of the household’s file.
    </p>
    ${
      all?.other
        ? html`<p>
            Together for ${moneyText(all.other.paid, answer)}, these reach
            ${reachText(all.other.days.value, horizonDays)}: ${all.other.stepTitles.join(', ')}.
          </p>`
        : ''
    }
  </section>`;
}

/** Where a file has no ladder. */
export function noLadder(): HTMLElement {
  return html`<div class="headline">
    <p class="answer">This household’s file has no ladder.</p>
    <p class="soft">
      A ladder lists what could be bought, at which price, and where the household starts: a block
      <code>ladder:</code> in the file. The demo file full-house.yaml has one to start from.
    </p>
  </div>`;
}
