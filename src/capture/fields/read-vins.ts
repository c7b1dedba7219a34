import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import { attributeOf, elementsWithin } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { PageNote } from '../draft/draft-lot.ts';
import { isPassedOver, type Line, type Scope } from '../text/lines.ts';
import { type Pair, pairText } from '../text/pair.ts';
import { bareVins, labelledVin, lookAlikePositions } from './find-vins.ts';

/** VINs by label, by their check digit in any text, and completed from an attribute where the page shows only the end. */
export function readVins(
  pairs: readonly Pair[],
  lines: readonly Line[],
  scope: Scope,
  into: Candidates,
): readonly PageNote[] {
  const notes: PageNote[] = [];
  for (const pair of pairs) {
    if (pair.meaning !== 'vin') continue;
    const vin = labelledVin(pair.value);
    if (vin !== null) {
      const sure = checkDigitMatches(vin) ? (pair.prose ? 'likely' : 'certain') : 'doubtful';
      into.add('vin', { value: vin, from: pair.from, text: pairText(pair), sure }, pair.node);
    }
    const foreign = lookAlikePositions(pair.value);
    if (foreign.length > 0) notes.push(lookAlikeNote(foreign));
  }
  for (const line of lines) {
    for (const value of bareVins(line.text)) {
      const text = aroundToken(line.text, value);
      into.add('vin', { value, from: 'page-text', text, sure: 'likely' }, line.element);
    }
  }
  if (into.of('vin').length === 0) readVinAttributes(lines, scope, into);
  return notes.slice(0, 1);
}

function lookAlikeNote(positions: readonly number[]): PageNote {
  const where = positions.length === 1 ? `position ${positions[0]}` : `positions ${positions.join(', ')}`;
  const message = `The VIN on this page has a letter that only looks Latin (${where}), so it was left out. Compare it with the car or its papers before you type it in.`;
  return { reason: 'vin-lookalike', message };
}

/** `data-vin` and the like, but only when the page shows the end of that same VIN. */
function readVinAttributes(lines: readonly Line[], scope: Scope, into: Candidates): void {
  for (const root of scope.roots) {
    for (const element of elementsWithin(root, (inner) => isPassedOver(inner, scope))) {
      for (const name of ['data-vin', 'data-clipboard-text', 'data-copy', 'title']) {
        for (const value of bareVins(attributeOf(element, name).slice(0, 60))) {
          const shown = lines.some((line) => line.text.includes(value.slice(-6)));
          if (shown) into.add('vin', { value, from: 'page-text', text: `${name}="${value}"`, sure: 'likely' });
        }
      }
    }
  }
}

/** The part of a line around a VIN in it, short enough to cite. */
function aroundToken(text: string, token: string): string {
  const at = Math.max(0, text.indexOf(token));
  return text.slice(Math.max(0, at - 60), at + 120);
}
