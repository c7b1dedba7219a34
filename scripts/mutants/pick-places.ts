import { groupBy } from '../../src/domain/group-by.ts';
import type { Mutant, Position } from './list-mutants.ts';

/** A place of a file that is changed in every way that is known for it. */
export interface Place extends Mutant {
  readonly mutants: number;
}

/** A place with more is a large block: whatever empties it is found, and it would take the sample for itself. */
const MOST_IN_ONE = 4;

/**
 * Draws places until they hold so many mutants between them, or a few more. StrykerJS takes ranges rather than single mutants, so
 * what lies within a place is drawn with it; no place lies within another.
 * @param count how many mutants at least, as far as there are so many
 * @param seed a whole number; the same one draws the same places of the same files
 */
export function pickPlaces(mutants: readonly Mutant[], count: number, seed: number): readonly Place[] {
  const byFile = groupBy(mutants, ({ file }) => file);
  const places = mutants
    .map((each) => ({ ...each, mutants: (byFile.get(each.file) ?? []).filter((other) => within(other, each)).length }))
    .filter((each) => each.mutants <= MOST_IN_ONE);
  const picked: Place[] = [];
  let sum = 0;
  for (const place of shuffled(places, seed)) {
    if (sum >= count) break;
    if (picked.some((other) => within(place, other) || within(other, place))) continue;
    picked.push(place);
    sum += place.mutants;
  }
  return picked;
}

/** As StrykerJS names a place: lines from 1. */
export const rangeOf = ({ file, start, end }: Place): string =>
  `${file}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`;

function within(inner: Mutant, outer: Mutant): boolean {
  return inner.file === outer.file && !before(inner.start, outer.start) && !before(outer.end, inner.end);
}

const before = (a: Position, b: Position): boolean => a.line < b.line || (a.line === b.line && a.column < b.column);

/** Fisher and Yates's shuffle, drawn from a linear congruential generator (constants of Numerical Recipes). */
function shuffled<Item>(items: readonly Item[], seed: number): readonly Item[] {
  const all = [...items];
  let state = seed >>> 0;
  for (let left = all.length - 1; left > 0; left--) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const at = Math.floor((state / 2 ** 32) * (left + 1));
    const [here, there] = [all[left], all[at]] as [Item, Item];
    all[left] = there;
    all[at] = here;
  }
  return all;
}
