import type { Candidates } from '../draft/candidates.ts';
import { canNameFact, labelRoles } from '../roles/label-roles.ts';
import type { Line } from '../text/lines.ts';
import { type Pair, pairText } from '../text/pair.ts';
import type { FieldReader } from './field-reader.ts';

// One token with a digit in it: 12, #0042, A-113, B/17, 3.14 (lane and run), H 0457.
const NUMBER =
  /^(?:no\.?|nr\.?|number|n ?[°ºo]|#)?\s?#?\s?((?:\p{Lu} )?(?=[\p{L}\-/.#]{0,6}\d)[\p{L}\d][\p{L}\d\-/.]{0,19})(?=$|[\s,:;)|\n(]|\.$)/iu;
const WORD = String.raw`(?:lot|item|lote|los)(?: ?(?:#|no\.?|number|num\.?|n ?[°ºo]|nr\.?))?`;
const IN_LINE = new RegExp(
  String.raw`(?<![\p{L}\d-])(?:${WORD}|lot,? (?:which )?is (?:number|no\.?)):? #?((?:[A-Z]{1,3}-?)?\d[\dA-Z-]{0,9}[A-Z]?|[A-Z]{1,3}-\d{1,6})(?![\p{L}\d]|[.,:]\d|,\d)`,
  'giu',
);
const RUN_IN_LINE =
  /(?<![\p{L}\d])(?:(?:ln|lane)[ /&-]{1,3}run|run(?: order| no\.?| number| #)?):? #?([A-Z]?[A-Z]?-?\d{1,4}[A-Z]?(?:[-/.]\d{1,4})?)(?![\p{L}\d]|[.,:]\d)/giu;
const LANE_AND_RUN = /(?<![\p{L}\d])lane ([A-Z\d]{1,3}),? run (?:no\.? |#)?(\d{1,4})(?![\p{L}\d])/giu;

/** The number the sale prints for the lot, and its place in the run. */
export const readLotNumber: FieldReader = ({ pairs, lines, extent }, into) => {
  for (const pair of pairs) {
    const { fact } = labelRoles(pair.label);
    for (const field of ['lotNumber', 'runNumber'] as const) {
      const weight = fact.get(field) ?? 0;
      if (weight === 0 || (fact.get('other') ?? 0) > weight) continue;
      if (!canNameFact(pair.label, pair.value)) continue;
      const value = numberIn(pair);
      if (value === null) continue;
      const score = 0.95 * weight * (pair.prose ? 0.7 : 1);
      into.add(field, { value, from: pair.from, text: pairText(pair), score }, pair.node);
    }
  }
  if (extent === 'card' && pairs.every(({ how }) => how !== 'head')) leadingNumber(lines, into);
  for (const line of lines) {
    const { text, element, prose, heading } = line;
    if (text.length > 600) continue;
    for (const match of text.matchAll(IN_LINE)) {
      const value = tidy(match[1] ?? '');
      if (value === null || isNotThis(text, match)) continue;
      const start = match.index <= 2 || heading > 0;
      const score = (start ? 0.9 : 0.84) * (prose ? 0.95 : 1);
      into.add(
        'lotNumber',
        { value, from: 'page-text', text: text.slice(Math.max(0, match.index - 20), match.index + 60), score },
        element,
      );
    }
    const laned = [...text.matchAll(LANE_AND_RUN)];
    for (const match of laned.length > 0 ? laned : text.matchAll(RUN_IN_LINE)) {
      const value = match[2] === undefined ? tidy(match[1] ?? '') : `${match[1]}-${match[2]}`;
      if (value === null || /\bruns?\b.{0,12}\bdriv/i.test(text)) continue;
      into.add(
        'runNumber',
        { value, from: 'page-text', text: text.slice(Math.max(0, match.index - 20), match.index + 60), score: 0.84 },
        element,
      );
    }
  }
};

/** The number that stands in a list before the car's name, or alone above it: `101 - 2019 Larkspur Hauler`. */
function leadingNumber(lines: readonly Line[], into: Candidates): void {
  const [first] = lines;
  const text = first?.text ?? '';
  const told = /^#?(\d{1,5}|[A-Z]{1,4}-?\d{1,5}[A-Z]?)(?:$|[.):]? ?[-–|·]?\s+(?=(?:19|20)\d\d \p{Lu}))/u.exec(
    text,
  )?.[1];
  if (first !== undefined && told !== undefined && !/^(?:19|20)\d\d$/.test(told))
    into.add('lotNumber', { value: told, from: 'page-text', text: text.slice(0, 80), score: 0.62 }, first.element);
}

function numberIn(pair: Pair): string | null {
  const value = pair.value.split('\n', 1)[0] ?? '';
  const found = NUMBER.exec(value)?.[1];
  if (found === undefined || value.length - found.length > 40 || /\d[/.-]\d{1,2}[/.-]\d{2}/.test(found)) return null;
  return tidy(found);
}

function tidy(value: string): string | null {
  const bare = value.replace(/[-/.]+$/, '');
  // "1st" is a place in a row, and words that a page has run together with a figure are no number.
  if (bare === '' || /^\d{1,3}(?:st|nd|rd|th)$/i.test(bare) || /^\p{Ll}{3,}\d/u.test(bare)) return null;
  return bare;
}

/** "Next: lot 13", "lots 200 to 299", "lot 12 of last week" name others. */
function isNotThis(text: string, match: RegExpExecArray): boolean {
  const before = text.slice(Math.max(0, match.index - 24), match.index);
  if (/\b(?:sister|prior|previous|yesterday|last (?:week|sale))\b[^.;]{0,20}$/i.test(before)) return true;
  const after = text.slice(match.index + match[0].length, match.index + match[0].length + 12);
  return (
    /\b(?:next|prev(?:ious)?|before|after|see|as|also|sister|instead|with|and|back to|parking|lots?)[ :‹›«»←→]*$/i.test(
      before,
    ) || /^\s*(?:of \d|to \d|through|-\s?\d|–\s?\d|\/\s?\d{2,} lots)/i.test(after)
  );
}
