import type { Setup } from './setup.ts';
import { placeInWords, valueAt } from './setup-words.ts';
import { valueInWords } from './value-words.ts';

/** One difference between two setups. */
export interface SetupChange {
  readonly section: string;
  /** "Buy fees › Riverbend › Online fee › band 3 › from". */
  readonly place: string;
  readonly what: 'new' | 'gone' | 'changed';
  /** Both values in words, where a single value changed. */
  readonly before?: string;
  readonly after?: string;
}

/**
 * What would be different if `after` took the place of `before`, in the order of the sections. Entries that have
 * a name of their own are paired by it, so that moving a venue down the list is no change to it; bands by position.
 */
export function setupChanges(before: Setup, after: Setup): readonly SetupChange[] {
  const changes: SetupChange[] = [];
  for (const section of new Set([...Object.keys(before), ...Object.keys(after)])) {
    compare([section], [section], before, after, changes);
  }
  return changes;
}

type Path = readonly PropertyKey[];

/** The two paths differ where an entry with an id stands at another position than before. */
function compare(oldPath: Path, newPath: Path, before: unknown, after: unknown, changes: SetupChange[]): void {
  const was = oldPath.reduce<unknown>(valueAt, before);
  const is = newPath.reduce<unknown>(valueAt, after);
  if (JSON.stringify(was) === JSON.stringify(is)) return;
  const section = String(newPath[0]);
  const key = String(newPath.at(-1));
  if (was === undefined || is === undefined) {
    // An element of a list is named by its place; only a field has values worth telling.
    const plain = isPlain(was ?? is) && typeof newPath.at(-1) !== 'number';
    changes.push({
      section,
      place: is === undefined ? placeInWords(oldPath, before) : placeInWords(newPath, after),
      what: was === undefined ? 'new' : 'gone',
      ...(plain ? { before: valueInWords(key, was), after: valueInWords(key, is) } : {}),
    });
  } else if (isPlain(was) || isPlain(is)) {
    const place = placeInWords(newPath, after);
    changes.push({ section, place, what: 'changed', before: valueInWords(key, was), after: valueInWords(key, is) });
  } else {
    for (const [oldKey, newKey] of pairs(was, is)) {
      compare([...oldPath, oldKey], [...newPath, newKey], before, after, changes);
    }
  }
}

/** Told with both its values; a list of figures is one value. */
const isPlain = (value: unknown): boolean =>
  Array.isArray(value)
    ? value.length > 0 && value.every((each) => typeof each === 'number')
    : typeof value !== 'object' || value === null;

/** Which part of the one belongs to which part of the other. */
function pairs(was: unknown, is: unknown): readonly (readonly [PropertyKey, PropertyKey])[] {
  if (!Array.isArray(was) || !Array.isArray(is)) {
    return [...new Set([...Object.keys(Object(was)), ...Object.keys(Object(is))])].map((key) => [key, key]);
  }
  const key = keyOf([...was, ...is]);
  if (key === undefined) return Array.from({ length: Math.max(was.length, is.length) }, (_, i) => [i, i]);
  const ids = [...new Set([...is, ...was].map(key))];
  const position = (list: readonly unknown[], id: string) => {
    const at = list.findIndex((element) => key(element) === id);
    // A position past the end leads to nothing, which reads as "new" or "gone".
    return at < 0 ? list.length : at;
  };
  return ids.map((id) => [position(was, id), position(is, id)]);
}

/** By what the elements of a list are told apart, where they can be: else a row put in front would change all others. */
function keyOf(elements: readonly unknown[]): ((element: unknown) => string) | undefined {
  if (elements.every((element) => typeof element === 'string')) return String;
  for (const name of ['id', 'date', 'label']) {
    const names = elements.map((element) => valueAt(element, name));
    if (names.every((each) => typeof each === 'string')) return (element) => String(valueAt(element, name));
  }
  if (elements.every((element) => valueAt(element, 'weekday') !== undefined)) return (hours) => JSON.stringify(hours);
  return undefined;
}
