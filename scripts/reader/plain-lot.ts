/** A drafted lot in the terms of an expectation: dollars, ISO times, and only the fields that the page gives. */

import type { DraftFieldName, DraftLot, DraftLots, Sure } from '../../src/capture/draft/draft-lot.ts';
import type { CloseTime } from '../../src/domain/time/close-time.ts';
import { MINUTE } from '../../src/domain/time/units.ts';

/**
 * One lot as a careful person reads it. `unsettled` names fields that can be read in two ways or only loosely; `unread`
 * names those that the reader is known to leave empty: they count as missed, and a reading of them would be news.
 */
export type PlainLot = Record<string, string | number | readonly string[]>;

const MONEY: ReadonlySet<string> = new Set(['priceNow', 'nextBid', 'increment', 'buyNow']);

export function plainLot(lot: DraftLot, read: DraftLots): PlainLot {
  const plain: PlainLot = {};
  const unsettled: string[] = [];
  for (const name of Object.keys(lot.fields) as DraftFieldName[]) {
    const field = lot.fields[name];
    const value = field?.readings[0]?.value;
    if (field === undefined || value === undefined) continue;
    if (!field.settled || isAsked(value)) unsettled.push(name);
    else if (typeof value === 'object') plain[name] = new Date(value.instant).toISOString().replace('.000Z', 'Z');
    else plain[name] = MONEY.has(name) ? Number(value) / 100 : value;
  }
  if (unsettled.length > 0) plain.unsettled = unsettled.sort();
  if (read.kind === 'many' && lot.pageUrl !== read.pageUrl) plain.pageUrl = lot.pageUrl;
  return plain;
}

/** A close that can be meant in several ways, all of which the draft offers. */
const isAsked = (value: unknown): boolean => isCloseTime(value) && value.otherwise.length > 0;

const isCloseTime = (value: unknown): value is CloseTime =>
  typeof value === 'object' && value !== null && 'otherwise' in value;

/** How sure the reader is of each settled field. */
export function sureness(lot: DraftLot): ReadonlyMap<string, Sure> {
  const sure = new Map<string, Sure>();
  for (const name of Object.keys(lot.fields) as DraftFieldName[]) {
    const field = lot.fields[name];
    const first = field?.readings[0];
    if (field?.settled === true && first !== undefined && !isAsked(first.value)) sure.set(name, first.sure);
  }
  return sure;
}

/** A lot without what the reader is known to leave empty. */
export function asRead({ unread, ...lot }: PlainLot): PlainLot {
  const left: readonly unknown[] = Array.isArray(unread) ? unread : [];
  return Object.fromEntries(Object.entries(lot).filter(([field]) => !left.includes(field)));
}

/** Whether two values of a field are the same reading; a countdown is only as fine as a minute. */
export function isSameValue(field: string, expected: unknown, read: unknown): boolean {
  if (field === 'close') return Math.abs(Date.parse(String(expected)) - Date.parse(String(read))) <= MINUTE;
  return expected === read;
}
