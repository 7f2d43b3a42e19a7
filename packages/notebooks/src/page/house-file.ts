/** The household as a file, to save and to open again. Nothing leaves the machine. */
import { readScenario, type ScenarioSpec } from '@rideout/sim';
import { Document, isScalar, visit } from 'yaml';
import type { HouseTables } from './house-tables.ts';
import { slug } from './slug.ts';

export type FileKind = 'yaml' | 'json';

/** Text that the command line reads. Lists of plain words and numbers stand on one line, as people write them. */
export function houseText(spec: ScenarioSpec, kind: FileKind): string {
  if (kind === 'json') return `${JSON.stringify(spec, null, 2)}\n`;
  const document = new Document(spec, { aliasDuplicateObjects: false });
  document.commentBefore = ' A household described in a form. Files it names lie beside this one.';
  visit(document, {
    Seq: (_, list) => {
      if (list.items.every((item) => isScalar(item))) list.flow = true;
    },
  });
  return document.toString({ lineWidth: 110, flowCollectionPadding: false });
}

/** "Alder Row, a pair of units" → "alder-row-a-pair-of-units.yaml". */
export function houseFileName(spec: ScenarioSpec, kind: FileKind): string {
  return `${slug(spec.title) || 'household'}.${kind}`;
}

/**
 * A file as it is written, to be edited.
 * @throws ScenarioError with everything that has to be mended in it
 */
export function openedSpec(text: string, name: string, tables: HouseTables): ScenarioSpec {
  const { document } = readScenario(text, name, tables.typical);
  return JSON.parse(JSON.stringify(document.value)) as ScenarioSpec; // what an alias shares is written out
}
