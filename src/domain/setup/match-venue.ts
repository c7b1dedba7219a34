import { type Outcome, ok, refuse } from '../outcome.ts';
import { plainWords } from '../text/plain-words.ts';
import type { Venue } from './venue.ts';

/**
 * Finds the venue that is meant by its id or name, written loosely: "SAGUARO-FLATS" is Saguaro Flats, and so is "Saguaro
 * Flats, lane 4" as long as no other venue shares the words.
 * @returns the venue's id
 */
export function matchVenue(text: string, venues: readonly Pick<Venue, 'id' | 'name'>[]): Outcome<string> {
  const words = plainWords(text);
  if (words === '') return refuse('empty', 'Name the venue.');
  const named = venues.map((venue) => ({ id: venue.id, names: [plainWords(venue.id), plainWords(venue.name)] }));
  const exact = named.filter(({ names }) => names.includes(words));
  const found = exact.length > 0 ? exact : named.filter(({ names }) => names.some((name) => shareWords(name, words)));
  const [first, second] = found;
  if (first === undefined) {
    return refuse('unknown-venue', `“${text.trim()}” is not a venue in Setup. Add it there, or choose the one it is.`);
  }
  if (second !== undefined) {
    return refuse('ambiguous', `“${text.trim()}” could be more than one venue in Setup. Choose the one it is.`);
  }
  return ok(first.id);
}

/** Whether all words of one stand, in their order and side by side, in the other. */
function shareWords(a: string, b: string): boolean {
  return Math.min(a.length, b.length) > 2 && (` ${a} `.includes(` ${b} `) || ` ${b} `.includes(` ${a} `));
}
