import type { PointedPlace } from '../../domain/setup/site.ts';
import { cleanLine } from '../dom/clean-text.ts';
import { ancestorsOf, attributeOf, briefText, type PageElement, type PageNode } from '../dom/page-tree.ts';
import { labelKey } from '../roles/label-list.ts';
import { columnLabel } from './column-label.ts';

/** How far above an element its label may stand, in elements. */
const MOST_ABOVE = 4;

/** The text that names an element, as printed: its own, its column's, or what stands beside it; empty when nothing does. */
export function labelBeside(element: PageElement, field: PointedPlace['field']): string {
  const said = asLabel(attributeOf(element, 'data-label') || attributeOf(element, 'aria-label'));
  if (said !== '') return said;
  const own = cleanLine(briefText(element));
  const colon = asLabel(/^([^:\n]{2,60}):\s*\S/.exec(own)?.[1] ?? '');
  if (colon !== '' && !/\d$/.test(colon)) return colon;
  const sentence = FIGURES.has(field) ? wordsBeforeFigure(own) : '';
  if (sentence !== '') return sentence;
  const column = columnLabel(element);
  return column === null ? besideInBoxes(element) : asLabel(column);
}

function besideInBoxes(element: PageElement): string {
  let node: PageNode = element;
  for (const up of ancestorsOf(element)) {
    const at = up.children.indexOf(node);
    const before = up.children
      .slice(0, at)
      .toReversed()
      .map((child) => cleanLine(briefText(child)))
      .find((text) => text !== '');
    if (before !== undefined) return asLabel(before) || captionUnder(up, node);
    const caption = captionUnder(up, node);
    if (caption !== '') return caption;
    if (up.depth < element.depth - MOST_ABOVE) return '';
    node = up;
  }
  return '';
}

/** A figure with its caption under it: two texts in one box, the second a label. */
function captionUnder(box: PageElement, node: PageNode): string {
  const after = box.children
    .slice(box.children.indexOf(node) + 1)
    .map((child) => cleanLine(briefText(child)))
    .filter((text) => text !== '');
  const [only] = after;
  return after.length === 1 && only !== undefined ? asLabel(only) : '';
}

const VIN = /\b[A-HJ-NPR-Z0-9]{17}\b/gi;

/** A text as a label, without the VIN that it may name; empty for what is none. */
function asLabel(text: string): string {
  const label = cleanLine(text.replace(VIN, ''));
  return label.length <= 80 && /\p{L}{2}/u.test(label) && !/[$€£]\s?\d/.test(label) ? label : '';
}

/** Fields whose values begin with a figure, so that words before it in the same text name it. */
const FIGURES: ReadonlySet<PointedPlace['field']> = new Set([
  'priceNow',
  'nextBid',
  'increment',
  'buyNow',
  'miles',
  'close',
]);

/** `Bidding stands at` of "Bidding stands at $9,750 after 12 bids." One word alone may be "about". */
function wordsBeforeFigure(text: string): string {
  const at = text.search(/[$€£]?\s?\d/);
  const words = text
    .slice(0, Math.max(at, 0))
    .replace(DAY_OR_MONTH_LAST, '')
    .replace(/[\s,:–-]+$/, '');
  return at > 0 && /\p{L}{2,}\s+\p{L}{2,}/u.test(words) ? asLabel(words) : '';
}

const MONTH =
  'jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?';
const WEEKDAY = '(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?';
const DAY_OR_MONTH = new RegExp(String.raw`\b(?:${MONTH}|${WEEKDAY})\b\.?`, 'gi');
const DAY_OR_MONTH_LAST = new RegExp(
  String.raw`(?:[\s,]*(?:\b(?:${MONTH}|${WEEKDAY}|on|today|tomorrow)\b\.?))+[\s,]*$`,
  'i',
);

/**
 * A label as it is compared with a remembered one. Counts in it may change ("14 bids"), and so may the month and the day
 * that it names ("June sale closes"); its other words may not. Of a key it makes the same key.
 */
export function anchorKey(label: string): string {
  return labelKey(label).replace(DAY_OR_MONTH, '0').replace(/\d+/g, '0').slice(0, 80);
}
