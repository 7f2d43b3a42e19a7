/** Opening a household's file and saving it. */
import { saveText } from '../charts/chart-export.ts';
import { html } from '../elements.ts';
import { saidBy } from '../error-words.ts';
import { pressButton, type HouseFields } from './house-fields.ts';
import { houseFileName, houseText, openedSpec, type FileKind } from './house-file.ts';
import type { KeptDrafts } from './house-kept-drafts.ts';
import type { HouseTables } from './house-tables.ts';

/** @param faults how many things have to be mended at present @param drafts where what is not saved is kept meanwhile */
export function openAndSave(
  fields: HouseFields,
  tables: HouseTables,
  faults: () => number,
  drafts: KeptDrafts,
): HTMLElement {
  const { draft } = fields;
  const said = html`<p class="house-said" role="status"></p>`;
  const unsaved = html`<span class="house-unsaved" role="status"></span>`;
  const written = () => JSON.stringify(draft.spec);
  let kept = written();
  let keptWhen = 'Not saved yet.';
  const isUnsaved = () => written() !== kept;
  const tellUnsaved = () => {
    if (!isUnsaved()) {
      unsaved.textContent = '';
      return drafts.forgetOwn();
    }
    const isKept = drafts.keep(draft.spec, Date.now());
    unsaved.textContent = isKept ? `${keptWhen} This browser keeps a draft.` : keptWhen;
    said.textContent = ''; // what it says is of the household before
  };
  const nowKept = (name: string, how: 'opened' | 'saved') => {
    kept = written();
    keptWhen = `Changed since ${name} was ${how}.`;
    tellUnsaved();
  };
  draft.onChange(tellUnsaved);
  addEventListener('beforeunload', (leaving) => {
    if (isUnsaved()) leaving.preventDefault();
  });
  const input = html`<input type="file" accept=".yaml,.yml,.json" />` as HTMLInputElement;
  const open = async (file: File) => {
    try {
      draft.replace(openedSpec(await file.text(), file.name, tables));
      nowKept(file.name, 'opened');
      said.textContent = `Opened ${file.name}.`;
    } catch (error) {
      said.textContent = `Nothing was changed. ${saidBy(error)}`;
    }
    input.value = ''; // the same file can be opened again once it is mended
  };
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file) void open(file);
  });
  const save = (kind: FileKind) => {
    const name = houseFileName(draft.spec, kind);
    saveText(houseText(draft.spec, kind), 'text/plain', name);
    nowKept(name, 'saved');
    const unfinished = faults() > 0 ? 'It is not finished: open it here again and mend what is listed. ' : '';
    said.textContent = `Saved as ${name}. ${unfinished}${besideWords(fields)}`;
  };
  return html`<div class="house-open">
    <div class="house-file">
      <label>Open a household’s file (YAML or JSON)<br />${input}</label>
    </div>
    ${pressButton('Save as YAML', () => save('yaml'))} ${pressButton('Save as JSON', () => save('json'))}
    ${unsaved} ${said}
  </div>`;
}

/** Which files must lie beside the saved one. */
function besideWords({ draft }: HouseFields): string {
  const text = JSON.stringify(draft.spec);
  const names = [...draft.files.profiles.keys(), ...draft.files.years.keys()];
  const used = names.filter((name) => text.includes(JSON.stringify(name)));
  return used.length > 0 ? `Keep ${used.join(' and ')} in the same folder.` : '';
}
