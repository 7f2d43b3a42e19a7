/** The controls for how times and temperatures are written, and how a link carries the choice. */
import * as Inputs from '@observablehq/inputs';
import type { Look } from '../charts/look.ts';
import { html } from '../elements.ts';
import { wordReader, type LinkPart } from './page-link.ts';
import { group, translated, type SettingsForm } from './settings-forms.ts';

/** What of it is written on the page: a choice that changes nothing is not offered. */
export interface LookShown {
  readonly clock: boolean;
  readonly temperature: boolean;
}

/** As the reader's browser writes them. */
export function usualLook(): Look {
  const american = /-US$/.test(navigator.language);
  return { clock: american ? 12 : 24, temperature: american ? 'F' : 'C' };
}

export function lookForm(start: Look, shown: LookShown): SettingsForm<Look> {
  const form = Inputs.form(
    {
      clock: Inputs.select([24, 12], {
        label: 'Clock',
        value: start.clock,
        format: (h) => (h === 24 ? '24 hours (18:30)' : '12 hours (6:30 pm)'),
      }),
      temperature: Inputs.select(['C', 'F'], {
        label: 'Temperatures',
        value: start.temperature,
        format: (t) => (t === 'C' ? '°C' : '°F'),
      }),
    },
    {
      template: ({ clock, temperature }) => {
        const offered = [...(shown.clock ? [clock] : []), ...(shown.temperature ? [temperature] : [])];
        if (offered.length === 0) return html`<span></span>`;
        return html`<div class="controls screen-only">${group('Written in', ...offered)}</div>`;
      },
    },
  );
  return translated(
    form,
    ({ clock, temperature }) => ({ clock: clock as 12 | 24, temperature: temperature as 'C' | 'F' }),
    ({ clock, temperature }) => ({ clock, temperature }),
  );
}

export function lookPart(form: SettingsForm<Look>, usual = usualLook()): LinkPart {
  return {
    words: ['clock', 'degrees'],
    forms: [form],
    say: () => lookLink(form.value, usual),
    take: (said) => {
      const { look, complaints } = lookFrom(said, usual);
      form.value = look;
      return { complaints };
    },
  };
}

/** Only what differs from the usual. */
export function lookLink({ clock, temperature }: Look, usual: Look): URLSearchParams {
  const said = new URLSearchParams();
  if (clock !== usual.clock) said.set('clock', String(clock));
  if (temperature !== usual.temperature) said.set('degrees', temperature);
  return said;
}

export function lookFrom(said: URLSearchParams, usual: Look): { look: Look; complaints: string[] } {
  const complaints: string[] = [];
  const read = wordReader(said, complaints);
  const look = {
    clock: read('clock', usual.clock, clockFrom, '12 or 24'),
    temperature: read('degrees', usual.temperature, degreesFrom, 'C or F'),
  };
  return { look, complaints };
}

const clockFrom = (text: string) => (text === '12' ? 12 : text === '24' ? 24 : undefined);
const degreesFrom = (text: string) => (text === 'C' || text === 'F' ? text : undefined);
