/** Compares what was read with what a careful person reads, field by field. */
import type { DraftLots, Sure } from '../../src/capture/draft/draft-lot.ts';
import { isSameValue, type PlainLot, plainLot, sureness } from './plain-lot.ts';

/**
 * - `right`: the value that the page gives;
 * - `wrong`: another;
 * - `missed`: none, though the page gives one;
 * - `open`: left for the user to choose, though the page gives one;
 * - `tempted`: a value where the page gives none, or surely only one of several.
 */
export type Verdict = 'right' | 'wrong' | 'missed' | 'open' | 'tempted';

export interface Judged {
  readonly field: string;
  readonly verdict: Verdict;
  /** How sure the reader was of what it said. */
  readonly sure: Sure | null;
  readonly expected: unknown;
  readonly read: unknown;
}

/** Judges every field of every lot of one page. A lot that is not there is all wrong, a lot not found all missed. */
export function judgePage(expected: readonly PlainLot[], read: DraftLots): readonly Judged[] {
  const found = read.lots.map((lot) => ({ plain: plainLot(lot, read), sure: sureness(lot) }));
  const partner = pairUp(
    expected,
    found.map(({ plain }) => plain),
  );
  const judged = expected.flatMap((lot, at) => {
    const mine = found[partner[at] ?? -1];
    return judgeLot(lot, mine?.plain ?? {}, mine?.sure ?? new Map());
  });
  const taken = new Set(partner);
  const strangers = found.filter((_, at) => !taken.has(at)).flatMap(({ plain, sure }) => judgeLot({}, plain, sure));
  return [...judged, ...strangers];
}

function judgeLot(expected: PlainLot, read: PlainLot, sure: ReadonlyMap<string, Sure>): readonly Judged[] {
  const [openExpected, openRead] = [listOf(expected.unsettled), listOf(read.unsettled)];
  const fields = new Set([...Object.keys(expected), ...Object.keys(read), ...openExpected, ...openRead]);
  fields.delete('unsettled');
  fields.delete('unread');
  return [...fields].flatMap((field): readonly Judged[] => {
    const verdict = judge(expected[field], read[field], {
      field,
      openExpected: openExpected.has(field),
      openRead: openRead.has(field),
      sure: sure.get(field) ?? null,
    });
    if (verdict === null) return [];
    return [{ field, verdict, sure: sure.get(field) ?? null, expected: expected[field], read: read[field] }];
  });
}

interface Circumstances {
  readonly field: string;
  readonly openExpected: boolean;
  readonly openRead: boolean;
  readonly sure: Sure | null;
}

/** Null where the page leaves it open and the reader is not sure either. */
function judge(expected: unknown, read: unknown, { field, openExpected, openRead, sure }: Circumstances) {
  if (openExpected) return read === undefined || sure === 'doubtful' ? null : 'tempted';
  if (expected === undefined) return read === undefined ? null : 'tempted';
  if (openRead) return 'open';
  if (read === undefined) return 'missed';
  return isSameReading(field, expected, read) ? 'right' : 'wrong';
}

/** The page's own words, whatever their case and blanks. */
function isSameReading(field: string, expected: unknown, read: unknown): boolean {
  if (isSameValue(field, expected, read)) return true;
  return typeof expected === 'string' && typeof read === 'string' && field !== 'close' && bare(expected) === bare(read);
}

const bare = (words: string): string => words.toLowerCase().replace(/\s+/g, ' ').trim();

const listOf = (value: PlainLot[string] | undefined): ReadonlySet<string> =>
  new Set(Array.isArray(value) ? (value as readonly string[]) : []);

/** For each expected lot the place of the lot that was read for it: the same VIN, else the one most alike, in order. */
function pairUp(expected: readonly PlainLot[], read: readonly PlainLot[]): readonly (number | undefined)[] {
  if (expected.length === 1 && read.length === 1) return [0];
  const free = new Set(read.keys());
  const partner: (number | undefined)[] = expected.map((lot) => {
    const at = [...free].find((one) => lot.vin !== undefined && read[one]?.vin === lot.vin);
    if (at !== undefined) free.delete(at);
    return at;
  });
  return partner.map((at, place) => {
    if (at !== undefined) return at;
    const lot = expected[place] ?? {};
    let best: { at: number; alike: number } | undefined;
    for (const one of free) {
      const alike = Object.keys(lot).filter((field) => isSameReading(field, lot[field], read[one]?.[field])).length;
      if (alike >= 3 && alike > (best?.alike ?? 0)) best = { at: one, alike };
    }
    if (best !== undefined) free.delete(best.at);
    return best?.at;
  });
}
