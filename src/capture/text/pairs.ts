import { elementsWithin } from '../dom/page-tree.ts';
import { attributePairs, cellPairs } from './cell-pairs.ts';
import { CellTexts } from './cell-texts.ts';
import { LABEL_LENGTH, meaningOf } from './labels.ts';
import { isPassedOver, type Line, type Scope } from './lines.ts';
import type { Pair } from './pair.ts';

/** Every labeled value of a scope whose lines are `lines`. A label without exactly one value beside it gives none. */
export function pairsOf(scope: Scope, lines: readonly Line[]): readonly Pair[] {
  const texts = new CellTexts(scope);
  const pairs: Pair[] = [];
  for (const root of scope.roots) {
    for (const element of elementsWithin(root, (inner) => isPassedOver(inner, scope))) {
      pairs.push(...attributePairs(element, texts), ...cellPairs(element, texts));
    }
  }
  for (const line of lines) pairs.push(...linePairs(line));
  return pairs;
}

// A dash after nothing but a label is as good as a colon.
const DASHED = /^([^|•·:–—]{2,60}) [–—] (?=\S)/u;

const BETWEEN = /\s[|•·–—]\s|(?<![•·*])[|•·](?![•·*])|;(?=\s*[\p{L} ]{2,30}:)|\t/u;

/** Labels within one line: `Lot: 12 | Odometer: 45,210 mi`, `Current bid $12,500`, `$12,500 high bid`. */
function linePairs(line: Line): readonly Pair[] {
  if (line.text.length > 1000) return [];
  const node = line.element;
  const pairs: Pair[] = [];
  const dashed = DASHED.exec(line.text)?.[1];
  const whole = dashed !== undefined && meaningOf(dashed) !== undefined ? line.text.replace(/ [–—] /, ': ') : line.text;
  for (const part of whole.split(BETWEEN).slice(0, 40)) {
    const text = part.trim();
    const colon = text.indexOf(':');
    const named = colon > 0 && colon <= LABEL_LENGTH ? meaningOf(text.slice(0, colon)) : undefined;
    const value = text.slice(colon + 1).trim();
    if (named !== undefined && value !== '' && !/^\d\d\b/.test(text.slice(colon + 1))) {
      const label = text.slice(0, colon);
      pairs.push({ meaning: named, label, value, after: '', node, how: 'colon', prose: line.prose, from: 'page-text' });
    } else if (!bringsItsOwnLabel(text, colon)) pairs.push(...runOnPairs(text, line));
  }
  return pairs;
}

/** `Highest bid last week on this model: $19,000` is not about the highest bid; `Highest bid so far: $3,900` is. */
function bringsItsOwnLabel(text: string, colon: number): boolean {
  if (colon <= 0 || colon > LABEL_LENGTH || !/\p{L}['’)]?$/u.test(text.slice(0, colon))) return false;
  return text.slice(0, colon).split(' ').length > MOST_LABEL_WORDS;
}

const MOST_LABEL_WORDS = 5;

const RUN_ON_WORDS = 6;

/** The longest label at the start of the text, or else at its end. */
function runOnPairs(text: string, line: Line): readonly Pair[] {
  const words = text.split(' ', 200);
  const most = Math.min(RUN_ON_WORDS, words.length - 1);
  for (const atStart of [true, false]) {
    for (let count = most; count >= 1; count--) {
      const label = (atStart ? words.slice(0, count) : words.slice(-count)).join(' ');
      const meaning = meaningOf(label);
      if (meaning === undefined) continue;
      const value = (atStart ? words.slice(count) : words.slice(0, -count)).join(' ');
      const how = atStart ? 'run-on' : 'trailing';
      return [{ meaning, label, value, after: '', node: line.element, how, prose: line.prose, from: 'page-text' }];
    }
  }
  return [];
}
