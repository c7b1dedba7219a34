import type { PointedPlace } from '../../domain/setup/site.ts';
import { cleanText } from '../dom/clean-text.ts';
import { type PageElement, textOf } from '../dom/page-tree.ts';
import { Candidates } from '../draft/candidates.ts';
import type { DraftFieldName, PageNote } from '../draft/draft-lot.ts';
import type { LotSource } from '../fields/field-reader.ts';
import { readClose } from '../fields/read-close.ts';
import { readCondition } from '../fields/read-condition.ts';
import { readLotNumber } from '../fields/read-lot-number.ts';
import { readMiles } from '../fields/read-miles.ts';
import { readMoney } from '../fields/read-money.ts';
import { readNames } from '../fields/read-names.ts';
import { readVins } from '../fields/read-vins.ts';
import { readWords } from '../fields/read-words.ts';
import { amountsSaid } from '../fields/said-amounts.ts';
import { findPlace, type Ground } from '../pointing/find-place.ts';
import type { Pair } from '../text/pair.ts';
import { isAnothers, marksOfOthers } from './anothers-part.ts';
import type { PageFacts } from './page-facts.ts';
import type { LotPlan } from './plan-lots.ts';

/** Reads what the user pointed at before on this site, and says where that is no longer what it was. */
export function readPlaces(
  at: number,
  facts: PageFacts,
  source: LotSource,
  { kind, lots, skip }: LotPlan,
  into: Candidates,
): readonly PageNote[] {
  const ground: Ground = { root: facts.tree.root, within: lots[at] ?? [], aside: skip };
  return facts.places.flatMap((place): readonly PageNote[] => {
    const where = findPlace(ground, place);
    // A list need not say of each lot what its own page says; that some lack it is said once for the list.
    if (where.found === 'none') return kind === 'one' ? [lost(where.message)] : [];
    const elements = where.found === 'one' ? [where.element] : where.elements.slice(0, MOST_ASKED);
    const own = elements.filter((element) => !isOfAnother(element, facts, into));
    if (own.length === 0) return [lost(anothersMessage(place))];
    const values = own.map((node) => ({ node, value: cleanText(textOf(node)).slice(0, 2000) }));
    const read = values.map(({ node, value }) => readPointed(place, value, node, source));
    const unread = values.find((_, one) => read[one] === null);
    if (unread === undefined) {
      for (const [one, found] of read.entries()) if (found !== null) copy(place, found, own[one] ?? null, into);
      return [];
    }
    return own.length === 1 ? [unreadable(place, unread.value)] : [lost(severalMessage(place))];
  });
}

/**
 * What is said of a list whose lots do not all show what was pointed at.
 * @param read what was read of each of its lots
 */
export function placesInList({ tree, places }: PageFacts, read: readonly Candidates[]): readonly PageNote[] {
  return places.flatMap((place): readonly PageNote[] => {
    const has = read.filter((one) => one.of(place.field).some(({ from }) => from === 'pointed')).length;
    if (has === read.length) return [];
    const name = `"${place.label}", the place you pointed at,`;
    if (has > 0) return [lost(`${name} is there for ${has} of ${read.length} lots. From the others nothing was read.`)];
    const anywhere = findPlace({ root: tree.root, within: [tree.root], aside: new Set() }, place);
    return anywhere.found === 'none'
      ? []
      : [lost(`${name} is on this page, but could not be read for any one of its lots.`)];
  });
}

/** Of more places than this nobody chooses one. */
const MOST_ASKED = 6;

const lost = (message: string): PageNote => ({ reason: 'place-lost', message: message.slice(0, 400) });

const severalMessage = ({ label }: PointedPlace): string =>
  `More than one place on this page is now called "${label}". Point at the right one again.`;

/** Whether the place stands in a part of the page that tells of another car than the one whose VIN was read. */
function isOfAnother(element: PageElement, facts: PageFacts, into: Candidates): boolean {
  const vin = into.best('vin');
  const at = vin === undefined ? [] : into.nodesOf('vin', vin.value);
  return vin !== undefined && at.length > 0 && isAnothers(element, at, marksOfOthers(facts.marks, vin.value, at));
}

const anothersMessage = (place: PointedPlace): string =>
  `The only "${place.label}" on this page stands with another car, so nothing was read from it. Point at the right one, or type it in.`;

/** The label under which the readers know a field, whatever the page calls it. */
const LABELS: Readonly<Record<DraftFieldName, string>> = {
  vin: 'VIN',
  year: 'Year',
  make: 'Make',
  model: 'Model',
  trim: 'Trim',
  // Without a unit it is no surer than any bare figure.
  miles: 'Odometer',
  lotNumber: 'Lot number',
  runNumber: 'Run number',
  venueName: 'Venue',
  sale: 'Sale name',
  seller: 'Seller',
  location: 'Location',
  close: 'Closes',
  priceNow: 'Current bid',
  nextBid: 'Next bid',
  increment: 'Increment',
  buyNow: 'Buy now',
  title: 'Title status',
  condition: 'Condition',
  transmission: 'Transmission',
  drive: 'Drive',
};

/** The very readers that read labeled text, on this one place; null where they find nothing for its field. */
function readPointed(place: PointedPlace, value: string, node: PageElement, source: LotSource): Candidates | null {
  const only = new Candidates(40);
  const pair: Pair = {
    label: LABELS[place.field],
    value: withoutLabel(value, place.label),
    after: '',
    node,
    how: 'cell',
    prose: false,
    from: 'pointed',
  };
  // The page's own lines still say the day and the zone of a time, and its makes.
  const one: LotSource = {
    ...source,
    pairs: [pair],
    looseLines: [],
    factLines: [],
    lines: place.field === 'close' ? source.lines : [],
  };
  readVins({ ...one, lines: [] }, only);
  readNames(one, [], only);
  for (const read of [readMiles, readLotNumber, readWords, readCondition, readMoney, readClose]) read(one, only);
  const first = only.best(place.field);
  if (first === undefined) return null;
  if (isMoney(place.field)) otherAmounts(place.field, one, first.score, only);
  return only;
}

type MoneyField = 'priceNow' | 'nextBid' | 'increment' | 'buyNow';
const isMoney = (field: DraftFieldName): field is MoneyField => /^(?:priceNow|nextBid|increment|buyNow)$/.test(field);

/** Where two amounts stand under one name and nothing tells them apart, both are read, and the user is asked. */
function otherAmounts(field: MoneyField, one: LotSource, score: number, only: Candidates): void {
  for (const { role, token } of amountsSaid(one)) {
    const { cents, foreign, text } = token;
    if (role === null && !foreign && cents > 0) only.add(field, { value: cents, from: 'pointed', text, score });
  }
}

/** Into what was read of the lot: the surest value, and those that are as sure. */
function copy<Name extends DraftFieldName>(
  { field, label }: PointedPlace & { readonly field: Name },
  found: Candidates,
  node: PageElement | null,
  into: Candidates,
): void {
  const score = found.best(field)?.score ?? 0;
  for (const one of found.of(field)) {
    if (one.score < score) continue;
    const text = one.text.replace(/^[^:]{1,30}: /, '');
    into.add(field, { ...one, from: 'pointed', text: `${label}: ${text}` }, node);
  }
}

function withoutLabel(value: string, label: string): string {
  const start = value.toLowerCase().startsWith(label.toLowerCase()) ? value.slice(label.length) : value;
  return start.replace(/^\s*:\s*/, '').trim() || value;
}

const WORDS: Partial<Record<DraftFieldName, string>> = {
  vin: 'a VIN',
  miles: 'an odometer reading',
  close: 'a closing time',
};

function unreadable(place: PointedPlace, value: string): PageNote {
  const what = WORDS[place.field] ?? 'what was there before';
  const message = `The place you pointed at, "${place.label}", now says "${value.slice(0, 80)}", which could not be read as ${what}. Type it in, or point again.`;
  return lost(message);
}
