/** Offers back what the browser has kept of an earlier description that was not saved. */
import type { ScenarioSpec } from '@rideout/sim';
import { html } from '../elements.ts';
import { pressButton } from './house-fields.ts';
import type { KeptDraft, KeptDrafts } from './house-kept-drafts.ts';

const MOST_TITLE = 80; // signs of a title that are told

const WHEN = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
});

/** @param take goes on with the draft; false where the form cannot show it, and is as it was */
export function draftOffer(drafts: KeptDrafts, take: (spec: ScenarioSpec) => boolean): HTMLElement {
  const place = html`<div></div>`;
  place.append(...drafts.others().map((draft) => offer(draft, drafts, take)));
  return place;
}

function offer(draft: KeptDraft, drafts: KeptDrafts, take: (spec: ScenarioSpec) => boolean): HTMLElement {
  const { spec } = draft;
  const box = html`<div class="draft-offer" role="status"></div>`;
  const gone = () => box.remove();
  const discard = () => {
    drafts.forget(draft.key);
    gone();
  };
  const refuse = () =>
    box.replaceChildren(
      html`<p>
        A draft that this browser kept cannot be used in this page. ${pressButton('Discard it', discard)}
      </p>`,
    );
  const goOn = () => {
    if (!take(spec!)) return refuse();
    drafts.forget(draft.key); // kept as this opening's own from now on
    gone();
  };
  if (spec === undefined) refuse();
  else
    box.append(
      html`<p>
        This browser kept a draft of <strong>${titleOf(spec)}</strong>, last changed on
        ${WHEN.format(draft.changedAt)}, that was not saved to a file.
      </p>`,
      html`<p class="buttons">
        ${pressButton('Go on with the draft', goOn)} ${pressButton('Discard it', discard)}
      </p>`,
    );
  return box;
}

function titleOf({ title }: ScenarioSpec): string {
  const named = title || 'a household without a name';
  return named.length > MOST_TITLE ? `${named.slice(0, MOST_TITLE)}…` : named;
}
