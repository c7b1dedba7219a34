import type { LotState } from '../../folds/lot-state.ts';

/** What is looked for: perhaps a lot by its number, and words that may stand anywhere. */
export interface LotSearch {
  /** Of "lot 427" or "#427"; lower case. */
  readonly number?: string;
  readonly words: readonly string[];
}

/** A number has a digit in it: "lot of rust" means no lot's number. */
const NUMBER = /(?:(?:^|\s)(?:lot|run)(?:\s*#|\s+|(?=\d))\s*|(?:^|\s)#)([a-z0-9-]*\d[a-z0-9-]*)(?=\s|$)/;

export function readSearch(text: string): LotSearch {
  const lower = text.toLowerCase();
  const [said = '', number] = NUMBER.exec(lower) ?? [];
  const words = lower.replace(said, ' ').split(/\s+/).filter(Boolean);
  return number === undefined ? { words } : { number, words };
}

/**
 * The lots that a search means, in their order. A number means the one lot that has exactly this number; while nobody has it,
 * those whose number begins so, since it may still be typed.
 */
export function searched(lots: readonly LotState[], { number, words }: LotSearch): readonly LotState[] {
  const withWords = words.length === 0 ? lots : lots.filter((lot) => hasWords(lot, words));
  if (number === undefined) return withWords;
  const exact = withWords.filter((lot) => numberOf(lot) === number);
  return exact.length > 0 ? exact : withWords.filter((lot) => numberOf(lot).startsWith(number));
}

/** "Lot 427" and "#427" are the number 427. */
const numberOf = ({ facts }: LotState): string =>
  (facts.lotNumber ?? '').toLowerCase().replace(/^(?:lot|run)?\s*#?\s*/, '');

const haystacks = new WeakMap<LotState, string>();

function hasWords(lot: LotState, words: readonly string[]): boolean {
  let haystack = haystacks.get(lot);
  if (haystack === undefined) {
    const f = lot.facts;
    haystack = [f.year, f.make, f.model, f.trim, f.vin, f.lotNumber, f.venueName, f.sale, f.seller, f.location, f.notes]
      .filter((part) => part !== undefined)
      .join(' ')
      .toLowerCase();
    haystacks.set(lot, haystack);
  }
  const text = haystack;
  return words.every((word) => text.includes(word));
}
