import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import type { PageNote } from '../draft/draft-lot.ts';
import { labelRoles } from '../roles/label-roles.ts';
import { type Pair, pairText } from '../text/pair.ts';
import type { FieldReader } from './field-reader.ts';
import { bareVins, labeledVin, lookAlikePositions } from './find-vins.ts';

/** Words that say of a VIN that it is another car's, or an example. */
const ANOTHERS =
  /\b(?:sister|instead|like (?:it|this|the)|similar|next|previous|prev|sample|example|e\.g\.|such as|other|another|just like|same as|last week|traded|replaced|donor|(?<!\b(?:is|are|be|being) )sold|looks like)\b/i;

/** VINs by label, and by their check digit in any text. */
export const readVins: FieldReader = ({ pairs, lines }, into) => {
  for (const pair of pairs) {
    const weight = labelRoles(pair.label).fact.get('vin') ?? 0;
    if (weight === 0) continue;
    const vin = labeledVin(pair.value);
    if (vin !== null) {
      const own = ANOTHERS.test(pair.label) ? 0.3 : pair.prose ? 0.8 : 0.97;
      const score = checkDigitMatches(vin) ? own : Math.min(own, 0.45);
      into.add('vin', { value: vin, from: pair.from, text: pairText(pair), score }, pair.node);
    }
    const foreign = lookAlikePositions(pair.value);
    if (foreign.length > 0) into.note(lookAlikeNote(foreign));
  }
  for (const pair of pairs as readonly Pair[]) {
    if (labelRoles(pair.label).fact.has('vin') || pair.how === 'colon' || pair.how === 'run-on') continue;
    for (const value of bareVins(pair.value.slice(0, 60))) {
      into.add('vin', { value, from: pair.from, text: pairText(pair), score: 0.8 }, pair.node);
    }
  }
  for (const line of lines) {
    for (const value of bareVins(line.text)) {
      const at = line.text.toUpperCase().indexOf(value);
      const before =
        line.text
          .slice(Math.max(0, at - 90), Math.max(0, at))
          .split(/(?<=\p{Ll}{2})[.!?] /u)
          .at(-1) ?? '';
      const score = ANOTHERS.test(before) ? 0.3 : line.prose ? 0.75 : 0.82;
      into.add('vin', { value, from: 'page-text', text: aroundToken(line.text, value), score }, line.element);
    }
  }
};

function lookAlikeNote(positions: readonly number[]): PageNote {
  const where = positions.length === 1 ? `position ${positions[0]}` : `positions ${positions.join(', ')}`;
  const message = `The VIN on this page has a letter that only looks Latin (${where}), so it was left out. Compare it with the car or its papers before you type it in.`;
  return { reason: 'vin-lookalike', message };
}

/** The part of a line around a VIN in it, short enough to cite. */
function aroundToken(text: string, token: string): string {
  const at = Math.max(0, text.toUpperCase().indexOf(token));
  return text.slice(Math.max(0, at - 60), at + 120);
}
