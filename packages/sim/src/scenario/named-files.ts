/** Files that a scenario names, wherever it does: each with its place, for those that are not there. */
import type { LocatedDocument, Path } from './located-document.ts';
import type { ReadScenario } from './read-scenario.ts';

export interface NamedFile {
  readonly kind: 'year' | 'profile';
  /** As written. */
  readonly file: string;
  /** Where it is first named. */
  readonly path: Path;
}

/** Parts in which appliances stand, as they are or as a change to them. */
const WITH_APPLIANCES = ['circuits', 'alternatives', 'ladder'];

/** Paths of the files that must be read before `resolveScenario`. */
export function filesNamed({ document }: ReadScenario): {
  readonly years: string[];
  readonly profiles: string[];
} {
  const named = namedFiles(document);
  const ofKind = (kind: NamedFile['kind']) =>
    named.filter((each) => each.kind === kind).map(({ file }) => file);
  return { years: ofKind('year'), profiles: ofKind('profile') };
}

/** Read off the text as it stands, so that a fault elsewhere in it hides none. */
export function namedFiles({ value }: Pick<LocatedDocument, 'value'>): NamedFile[] {
  if (!isBlock(value)) return [];
  const weather = value['weather'];
  const yearFile = isBlock(weather) ? weather['yearFile'] : undefined;
  const years: NamedFile[] =
    typeof yearFile === 'string' ? [{ kind: 'year', file: yearFile, path: ['weather', 'yearFile'] }] : [];
  const profiles = WITH_APPLIANCES.flatMap((key) => profilesIn(value[key], [key]));
  const first = new Map([...profiles].reverse().map((each) => [each.file, each]));
  return [...years, ...[...first.values()].reverse()];
}

/** `file: usage.csv` of an appliance, or a change of `circuits.hall.appliances.0.file`. */
function profilesIn(value: unknown, path: Path): NamedFile[] {
  if (Array.isArray(value)) return value.flatMap((item, i) => profilesIn(item, [...path, i]));
  if (!isBlock(value)) return [];
  return Object.entries(value).flatMap(([key, part]): NamedFile[] => {
    const at = [...path, key];
    const isFile = typeof part === 'string' && key.split('.').at(-1) === 'file';
    return isFile ? [{ kind: 'profile', file: part, path: at }] : profilesIn(part, at);
  });
}

function isBlock(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
