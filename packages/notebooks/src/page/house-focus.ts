/** Where somebody who uses the keyboard goes on once the form was drawn anew. */
import type { Path } from './house-schema.ts';

/** Where they were, by what a form drawn anew still has. */
export interface FocusBefore {
  readonly id: string;
  readonly detailsAbout: string | undefined;
  readonly headingId: string | undefined;
}

/** Undefined: they were not in the form, and stay where they are. */
export function focusIn(form: HTMLElement): FocusBefore | undefined {
  const focused = document.activeElement;
  if (!(focused instanceof HTMLElement) || !form.contains(focused)) return undefined;
  return {
    id: focused.id,
    detailsAbout: focused.closest('details')?.dataset['about'],
    headingId: focused.closest('section')?.getAttribute('aria-labelledby') ?? undefined,
  };
}

/** The same field; else the first field of what was added, or what has moved up; else the part they were in. */
export function focusAgain(form: HTMLElement, before: FocusBefore, at: Path | undefined): void {
  const same = before.id === '' ? null : document.getElementById(before.id);
  if (same) return same.focus({ preventScroll: true });
  const field = at && fieldAt(form, at);
  if (field) return openAndFocus(field);
  const summaries = [...form.querySelectorAll<HTMLElement>('details > summary')];
  const about = summaries.find((s) => s.parentElement!.dataset['about'] === before.detailsAbout);
  if (about) return openAndFocus(about);
  const heading = document.getElementById(before.headingId ?? '');
  heading?.setAttribute('tabindex', '-1');
  heading?.focus();
}

/** The first at or under the path; in a list the neighbour above; else what the list is part of. */
function fieldAt(form: HTMLElement, at: Path): HTMLElement | undefined {
  const fields = [...form.querySelectorAll<HTMLElement>('[data-path]')].map((field) => ({
    field,
    path: JSON.parse(field.dataset['path']!) as Path,
  }));
  const last = at.at(-1)!;
  const above = typeof last === 'number' && last > 0 ? [[...at.slice(0, -1), last - 1]] : [];
  const around = at.length > 2 ? [at.slice(0, 2)] : [];
  for (const wanted of [at, ...above, ...around]) {
    const found = fields.find(({ path }) => wanted.every((step, i) => path[i] === step));
    const input = found?.field.querySelector<HTMLElement>('input, select');
    if (input) return input;
  }
  return undefined;
}

/** What is folded away cannot be focused. */
export function openAndFocus(element: HTMLElement): void {
  for (let at = element.closest('details'); at; at = at.parentElement?.closest('details') ?? null)
    if (!element.matches('summary') || element.parentElement !== at) at.open = true;
  element.focus();
}
