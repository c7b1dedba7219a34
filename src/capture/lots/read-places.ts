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
import { findPlace } from '../pointing/find-place.ts';
import type { Pair } from '../text/pair.ts';
import { isAnothers, marksOfOthers } from './anothers-part.ts';
import type { PageFacts } from './page-facts.ts';
import type { LotPlan } from './plan-lots.ts';

/** Reads what the user pointed at before on this site, and says where that is no longer what it was. */
export function readPlaces(
  facts: PageFacts,
  source: LotSource,
  { skip }: LotPlan,
  into: Candidates,
): readonly PageNote[] {
  return facts.places.flatMap((place): readonly PageNote[] => {
    const where = findPlace(facts.tree, place, skip);
    if (!where.found) return [{ reason: 'place-lost', message: where.message.slice(0, 400) }];
    if (isOfAnother(where.element, facts, into)) return [{ reason: 'place-lost', message: anothersMessage(place) }];
    const value = cleanText(textOf(where.element)).slice(0, 2000);
    return readPointed(place, value, where.element, source, into) ? [] : [unreadable(place, value)];
  });
}

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

/** The very readers that read labeled text, on this one place. */
function readPointed(
  place: PointedPlace,
  value: string,
  node: PageElement,
  source: LotSource,
  into: Candidates,
): boolean {
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
  return copy(place, only, node, into);
}

function copy<Name extends DraftFieldName>(
  { field, label }: PointedPlace & { readonly field: Name },
  from: Candidates,
  node: PageElement,
  into: Candidates,
): boolean {
  const first = from.best(field);
  if (first === undefined) return false;
  const text = first.text.replace(/^[^:]{1,30}: /, `${label}: `);
  into.add(field, { ...first, from: 'pointed', text }, node);
  return true;
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
  return { reason: 'place-lost', message };
}
