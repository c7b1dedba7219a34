import { type Outcome, ok, refuse } from '../outcome.ts';
import { plainWords } from '../text/plain-words.ts';
import type { Venue } from './venue.ts';

/**
 * Finds the venue that is meant by its id or its whole name; case, blanks and punctuation do not matter, and a lane may
 * stand behind it: "SAGUARO-FLATS, lane 4" is Saguaro Flats. Anything looser ("Flats", "Saguaro Flats West") is a question
 * and no answer, because another venue's fees would make another max bid.
 * @returns the venue's id
 */
export function matchVenue(text: string, venues: readonly Pick<Venue, 'id' | 'name'>[]): Outcome<string> {
  const words = plainWords(text);
  if (words === '') return refuse('empty', 'Name the venue.');
  const named = venues.map((venue) => ({ venue, names: [plainWords(venue.id), plainWords(venue.name)] }));
  const [first, second] = named.filter(({ names }) => names.some((name) => isName(name, words)));
  if (second !== undefined) {
    return refuse('ambiguous', `“${text.trim()}” could be more than one venue in Setup. Choose the one it is.`);
  }
  if (first !== undefined) return ok(first.venue.id);
  const [like, ...others] = named.filter(({ names }) => names.some((name) => shareWords(name, words)));
  if (like === undefined) {
    return refuse('unknown-venue', `“${text.trim()}” is not a venue in Setup. Add it there, or choose the one it is.`);
  }
  const names = [like, ...others].map(({ venue }) => venue.name).join(' or ');
  return refuse('loose', `“${text.trim()}” is not a venue’s whole name. If it is ${names}, choose that.`);
}

const isName = (name: string, words: string): boolean =>
  name !== '' && (words === name || (words.startsWith(`${name} `) && LANE.test(words.slice(name.length))));
const LANE = /^ lane [a-z0-9]{1,3}$/;

/** Whether all words of one stand, in their order and side by side, in the other. */
function shareWords(a: string, b: string): boolean {
  return Math.min(a.length, b.length) > 2 && (` ${a} `.includes(` ${b} `) || ` ${b} `.includes(` ${a} `));
}
