import { ancestorsOf, isWithin, type PageElement, textOf } from '../dom/page-tree.ts';
import { linesOf } from '../text/lines.ts';
import { distancesIn } from '../tokens/distance-tokens.ts';
import { moneyIn } from '../tokens/money-tokens.ts';
import type { LotMark } from './lot-marks.ts';

/** Words beside a VIN or a name that say that it is another car. */
export const ANOTHERS =
  /\b(?:donor|replaced|swap(?:ped)?|taken from|sister|instead|next|previous|prev|up next|similar|also|same seller|just like|like it|sample|example|looks like|last week|yesterday|earlier)\b/i;

/** The marks by which a page names the one lot that it is about. */
export interface OwnLot {
  readonly vin: string;
  readonly name: string;
  readonly marks: readonly LotMark[];
}

/**
 * Which of the marks of a page are its own lot's: the main heading's name, and the VIN that stands by itself nearest to it.
 * @param marks those that are in no part about others
 */
export function ownLot(marks: readonly LotMark[]): OwnLot {
  const names = marks.filter((mark) => mark.kind === 'name');
  const vins = marks.filter((mark) => mark.kind === 'vin');
  const title = names.find((mark) => mark.heading === 1) ?? names.find((mark) => mark.heading > 0) ?? names[0];
  const weight = (mark: LotMark) =>
    (mark.prose ? -2 : 0) +
    (ANOTHERS.test(around(mark)) ? -3 : 0) +
    (title !== undefined && isBesideAnother(mark, title, names) ? -2.5 : 0) +
    (title !== undefined && isWithin(mark.element, sectionOf(title)) ? 1 : 0) +
    vins.filter((other) => other.key === mark.key).length * 0.1;
  const vin = vins.toSorted((a, b) => weight(b) - weight(a) || a.element.order - b.element.order)[0];
  // Two that stand side by side and speak for themselves alike: nobody can tell which of them it is.
  const rival = vins.find(
    (mark) =>
      vin !== undefined &&
      mark.key !== vin.key &&
      !mark.prose &&
      mark.element.parent === vin.element.parent &&
      weight(mark) >= weight(vin) - 0.25,
  );
  // In a sentence it is this lot's only if it is the only one.
  const only = new Set(vins.map((mark) => mark.key)).size === 1;
  const vinKey = vin !== undefined && weight(vin) > (only ? -3 : -2) ? vin.key : '';
  const own = marks.filter((mark) =>
    mark.kind === 'vin' ? mark.key === vinKey || mark === rival : title === undefined || isOwnName(mark, title.key),
  );
  return { vin: rival === undefined ? vinKey : '', name: title?.key ?? '', marks: own };
}

/** Whether the smallest part around a VIN that names a car names only others than the main heading does. */
function isBesideAnother(vin: LotMark, title: LotMark, names: readonly LotMark[]): boolean {
  for (const up of [vin.element, ...ancestorsOf(vin.element)]) {
    const here = names.filter((name) => isWithin(name.element, up));
    if (here.length > 0) return here.every((name) => name.key !== title.key);
  }
  return false;
}

/** The part of the page that a heading is over. */
function sectionOf(mark: LotMark): PageElement {
  for (const up of ancestorsOf(mark.element)) if (/^(?:main|article|section)$/.test(up.tag)) return up;
  return mark.element.parent ?? mark.element;
}

const around = (mark: LotMark): string => {
  const text = textOf(mark.element);
  const at = text.toUpperCase().indexOf(mark.key.toUpperCase());
  return text.slice(Math.max(0, at - 90), Math.max(0, at));
};

/** Keys begin with the year; a headline with the year misprinted is still about the same car. */
const sameCar = (a: string, b: string): boolean => {
  const [one, other] = [a.slice(5), b.slice(5)];
  return one.startsWith(other) || other.startsWith(one);
};

/** A name with another year in running text or in a link is another car of that model. */
function isOwnName(mark: LotMark, own: string): boolean {
  const isLinked = [mark.element, ...mark.element.children].some((one) => one.kind === 'element' && one.tag === 'a');
  return sameCar(mark.key, own) && (mark.key.slice(0, 4) === own.slice(0, 4) || (!mark.prose && !isLinked));
}

const MOST_CARD_TEXT = 700;

/**
 * The parts of a page that tell of other cars: around each of their VINs and names as much as makes it a card with figures of
 * its own, and never anything that the lot's own marks stand in.
 */
export function partsOfOthers(
  marks: readonly LotMark[],
  own: OwnLot,
  skip: ReadonlySet<PageElement>,
): ReadonlySet<PageElement> {
  const mine = new Set<PageElement>();
  for (const mark of own.marks) {
    for (let up: PageElement | null = mark.element; up !== null && !mine.has(up); up = up.parent) mine.add(up);
  }
  const parts = new Set<PageElement>();
  for (const mark of marks) {
    if (own.marks.includes(mark) || (mark.kind === 'name' && own.name !== '' && isOwnName(mark, own.name))) continue;
    if (mine.has(mark.element) || [...ancestorsOf(mark.element)].some((up) => skip.has(up) || parts.has(up))) continue;
    let part = mark.element;
    while (
      !hasFigures(part) &&
      part.parent !== null &&
      !mine.has(part.parent) &&
      textOf(part.parent).length <= MOST_CARD_TEXT
    ) {
      part = part.parent;
    }
    parts.add(part);
  }
  return parts;
}

function hasFigures(part: PageElement): boolean {
  return linesOf({ roots: [part], skip: new Set() }).some(
    (line) => moneyIn(line.text, '.').length > 0 || distancesIn(line.text, '.').length > 0,
  );
}
