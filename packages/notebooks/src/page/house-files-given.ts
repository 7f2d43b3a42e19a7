/** Files a person gives to the page: read here, never sent. */
import { profileHints, readProfile, readWeatherYear } from '@rideout/sim';
import { html } from '../elements.ts';
import { saidBy } from '../error-words.ts';
import type { HouseFields } from './house-fields.ts';

/** 'year': a weather year. Otherwise the circuit (by position) that a measured load stands in for, or only its name. */
export type FileFor = 'year' | 'profile' | { readonly circuit: number };

/** A button that opens a file; what went wrong, or what to look at twice, is said beside it. */
export function fileButton(label: string, accept: string, use: FileFor, fields: HouseFields): HTMLElement {
  const input = html`<input type="file" accept=${accept} />` as HTMLInputElement;
  const said = html`<p class="house-said" role="status"></p>`;
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) void takeFile(file, use, fields, said);
  });
  return html`<div class="house-file">
    <label>${label}<br />${input}</label>${said}
  </div>`;
}

async function takeFile(file: File, use: FileFor, fields: HouseFields, said: HTMLElement): Promise<void> {
  try {
    giveFile(file.name, await file.text(), use, fields);
  } catch (error) {
    said.textContent = `Nothing was changed. ${saidBy(error)}`;
  }
}

/** @throws WeatherFileError or ProfileFileError with every fault of the file */
export function giveFile(name: string, text: string, use: FileFor, { draft }: HouseFields): void {
  if (use === 'year') {
    readWeatherYear(text, name, draft.spec.site); // said at once when it cannot be read
    draft.files.years.set(name, text);
    for (const other of ['monthly', 'normals']) draft.set(['weather', other], undefined);
    return draft.set(['weather', 'yearFile'], name, 'shape');
  }
  draft.files.profiles.set(name, readProfile(text, name, { timeZone: draft.spec.site.timeZone }));
  if (use === 'profile') return draft.filesGiven();
  const measured = { kind: 'measured', file: name, title: 'Measured' };
  draft.set(['circuits', use.circuit, 'appliances'], [measured], 'shape');
}

/** What to look at twice in the measured records in use, by file. */
export function measuredWords(fields: HouseFields, name: string): string {
  const profile = fields.draft.files.profiles.get(name);
  if (!profile) return `This page does not have ${name} yet: choose it below.`;
  const days = (profile.watts.length * profile.intervalMinutes) / 1440;
  const hints = profileHints(profile).map((hint) => ` Look twice: ${hint}.`);
  return `${profile.watts.length} readings, ${Math.round(days * 10) / 10} days, repeated to the end. Keep ${name} beside the saved file.${hints.join('')}`;
}
