import type { Candidates } from '../draft/candidates.ts';
import { type Pair, pairText } from '../text/pair.ts';

// One token with a digit in it: 12, #0042, A-113, B/17, 3.14 (lane and run).
const NUMBER = /^#?\s?((?=[\p{L}\-/.#]{0,6}\d)[\p{L}\d][\p{L}\d\-/.]{0,19})(?=$|[\s,:;)|\n]|\.$)/u;

/** The number the sale prints for the lot, and its place in the run. */
export function readLotNumber(pairs: readonly Pair[], into: Candidates): void {
  for (const pair of pairs) {
    const field = pair.meaning === 'lotNumber' ? 'lotNumber' : pair.meaning === 'runNumber' ? 'runNumber' : null;
    if (field === null || pair.how === 'trailing' || pair.prose) continue;
    const value = NUMBER.exec(pair.value.replace(/^(?:no|nr|number)\.?\s/i, ''))?.[1]?.replace(/[-/.]+$/, '');
    if (value === undefined || /^\d{1,3}(?:st|nd|rd|th)$/i.test(value)) continue;
    // "Lot closes28": words that a page has run together with a figure are no number.
    if (/^\p{Ll}{3,}\d/u.test(value)) continue;
    const sure = pair.how === 'run-on' ? 'likely' : 'certain';
    into.add(field, { value, from: pair.from, text: pairText(pair), sure });
  }
}
