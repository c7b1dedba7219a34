import type { PointedPlace } from '../../domain/setup/site.ts';
import { type PageElement, textOf } from '../dom/page-tree.ts';
import { Candidates } from '../draft/candidates.ts';
import type { DraftFieldName, PageNote } from '../draft/draft-lot.ts';
import { isCountdown } from '../fields/close-text.ts';
import { readClose } from '../fields/read-close.ts';
import { readLotNumber } from '../fields/read-lot-number.ts';
import { readMiles } from '../fields/read-miles.ts';
import { readMoney } from '../fields/read-money.ts';
import { readNames } from '../fields/read-names.ts';
import { readVins } from '../fields/read-vins.ts';
import { readWords } from '../fields/read-words.ts';
import { findPlace } from '../pointing/find-place.ts';
import { cleanText } from '../text/clean-text.ts';
import type { Line, Scope } from '../text/lines.ts';
import type { Pair } from '../text/pair.ts';
import { isAnothers, marksOfOthers } from './anothers-part.ts';
import type { PageFacts } from './page-facts.ts';

/** Reads what the user pointed at before on this site, and says where that is no longer what it was. */
export function readPlaces(
  facts: PageFacts,
  lines: readonly Line[],
  aside: ReadonlySet<PageElement>,
  into: Candidates,
): readonly PageNote[] {
  return facts.places.flatMap((place): readonly PageNote[] => {
    const where = findPlace(facts.tree, place, aside);
    if (!where.found) return [{ reason: 'place-lost', message: where.message.slice(0, 400) }];
    if (isOfAnother(where.element, facts, into)) return [{ reason: 'place-lost', message: anothersMessage(place) }];
    const value = cleanText(textOf(where.element)).slice(0, 2000);
    const pair: Pair = {
      meaning: place.field === 'close' ? (isCountdown(value) ? 'time-left' : 'closes-at') : place.field,
      label: place.label,
      value: withoutLabel(value, place.label),
      after: '',
      node: where.element,
      how: 'cell',
      prose: false,
      from: 'pointed',
    };
    return readPointed(pair, place, facts, lines, into) ? [] : [unreadable(place, value)];
  });
}

/** Whether the place stands in a part of the page that tells of another car than the one whose VIN was read. */
function isOfAnother(element: PageElement, facts: PageFacts, into: Candidates): boolean {
  const [vin] = into.of('vin');
  const at = vin === undefined ? [] : into.nodesOf('vin', vin.value);
  return vin !== undefined && at.length > 0 && isAnothers(element, at, marksOfOthers(facts.marks, vin.value, at));
}

const anothersMessage = (place: PointedPlace): string =>
  `The only "${place.label}" on this page stands with another car, so nothing was read from it. Point at the right one, or type it in.`;

/** The very readers that read labeled text, on this one place. */
function readPointed(
  pair: Pair,
  place: PointedPlace,
  facts: PageFacts,
  lines: readonly Line[],
  into: Candidates,
): boolean {
  const only = new Candidates(facts.budget.candidates);
  const nowhere: Scope = { roots: [], skip: new Set() };
  readVins([pair], [], nowhere, only);
  readNames([pair], [], facts, only);
  readMiles([pair], [], facts.decimal, only);
  readLotNumber([pair], only);
  readWords([pair], [], only);
  readMoney({ pairs: [pair], lines: [], offers: [], decimal: facts.decimal }, only);
  readClose({ pairs: [pair], lines, scope: nowhere, markedUp: [] }, facts.clock, only);
  return copy(place.field, only, into);
}

function copy<Name extends DraftFieldName>(field: Name, from: Candidates, into: Candidates): boolean {
  const [first] = from.of(field).filter((reading) => reading.from === 'pointed');
  if (first !== undefined) into.add(field, first);
  return first !== undefined;
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
