import fc from 'fast-check';
import { type LotId, lotIdSchema } from '../../src/domain/lot/lot.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { HAPPENING_KINDS, type Happening, type HappeningKind, rowOf } from '../../src/journal/happening.ts';
import { type EntryId, entryIdSchema } from '../../src/journal/ids.ts';
import { type Change, makeEntry, type WritingHead } from '../../src/journal/make-entry.ts';
import { newDeviceId, nextLotId } from '../../src/journal/sortable-id.ts';
import { ALERTS, BOOKS, LOTS, lotOfSubject, SETUP, subjectOfLot } from '../../src/journal/subject.ts';
import { HAPPENINGS, type There } from './happening-arbitrary.ts';

/** Something that happens, to whatever there is: numbers choose among that, modulo how much there is. */
export interface Telling {
  readonly tell: (there: There) => Happening;
  readonly lot: number;
  readonly dispute: number;
  readonly entry: number;
}

/** One thing that somebody does on one of the devices. */
export type Step = { device: number; wait: number } & ({ do: 'tell'; telling: Telling } | { do: 'sync'; from: number });

/** What there is much of in a journal; of all else there is as much of each. */
const COMMON: Readonly<Partial<Record<HappeningKind, number>>> = {
  'lots-added': 6,
  'lot-changed': 8,
  'bid-noted': 3,
  'dispute-opened': 3,
  undone: 6,
};

/** This and nothing else. */
export const telling = (happening: Happening): Telling => ({ tell: () => happening, lot: 0, dispute: 0, entry: 0 });

/** The id of nothing. */
const NOTHING = '0'.repeat(26);

/** Something that happens, of these kinds or of any. */
export function tellingOf(kinds: readonly HappeningKind[] = HAPPENING_KINDS): fc.Arbitrary<Telling> {
  const tell = fc.oneof(
    ...kinds.map((kind) => ({
      weight: COMMON[kind] ?? 1,
      arbitrary: HAPPENINGS[kind] as fc.Arbitrary<Telling['tell']>,
    })),
  );
  return fc.record({ tell, lot: fc.nat(), dispute: fc.nat(), entry: fc.nat() });
}

/** A run of steps on `devices` devices, whose clocks also stand still and go backwards. */
export function stepsOn(devices: number, maxLength = 50): fc.Arbitrary<Step[]> {
  const where = fc.record({ device: fc.nat({ max: devices - 1 }), wait: fc.constantFrom(0, 1, 1000, -5000) });
  const what = fc.oneof(
    { weight: 14, arbitrary: fc.record({ do: fc.constant('tell' as const), telling: tellingOf() }) },
    { weight: 1, arbitrary: fc.record({ do: fc.constant('sync' as const), from: fc.nat() }) },
  );
  return fc.array(
    fc.tuple(where, what).map(([place, step]) => ({ ...place, ...step })),
    { maxLength },
  );
}

/** What each device holds in the end. */
export function play(steps: readonly Step[], devices: number): Entry[][] {
  let seed = 7;
  const random = (): Uint8Array =>
    Uint8Array.from({ length: 8 }, () => {
      seed = (seed * 1103515245 + 12345) % 2 ** 31;
      return seed >> 16;
    });
  const held = Array.from({ length: devices }, () => new Map<EntryId, Entry>());
  const clocks = held.map((_, i) => Date.UTC(2026, 3, 10) + i * 3000);
  const heads: WritingHead[] = held.map((_, i) => ({
    device: newDeviceId(Uint8Array.from({ length: 10 }, () => i)),
    sequence: 0,
    hash: '',
    lastId: null,
  }));
  for (const step of steps) {
    const mine = at(held, step.device);
    const time = at(clocks, step.device) + step.wait;
    clocks[step.device] = time;
    if (step.do === 'sync') {
      for (const [id, entry] of at(held, step.from % devices)) mine.set(id, entry);
      heads[step.device] = { ...at(heads, step.device), lastId: [...mine.keys()].sort().at(-1) ?? null };
      continue;
    }
    const change = changeFor(step.telling, [...mine.values()], (last) => nextLotId(instant(time), last, random()));
    // Every other entry is of the earliest kind, without a salt.
    const salt = mine.size % 2 === 0 ? Uint8Array.from([...random(), ...random()]) : undefined;
    const when = { at: instant(time), author: 'buyer', random: random(), ...(salt && { salt }) };
    const made = makeEntry(at(heads, step.device), change, when);
    mine.set(made.entry.id, made.entry);
    heads[step.device] = made.head;
  }
  return held.map((entries) => [...entries.values()]);
}

/** Each entry once, as a merge of all devices would have them. */
export function union(devices: readonly (readonly Entry[])[]): Entry[] {
  return [...new Map(devices.flat().map((entry) => [entry.id, entry])).values()];
}

/** What happens, as the change that keeps it; about something that was never there when there is nothing yet. */
export function changeFor(
  { tell, lot, dispute, entry }: Telling,
  entries: readonly Entry[],
  newId: (last: LotId | null) => LotId,
): Change {
  const one = <Item>(items: readonly Item[], number: number): Item | undefined => items[number % items.length];
  const lots = entries.flatMap(({ happening }) => (happening.kind === 'lots-added' ? happening.lots : []));
  const opened = one(
    entries.filter(({ happening }) => happening.kind === 'dispute-opened'),
    dispute,
  );
  const there = {
    lot: one(lots, lot)?.id ?? lotIdSchema.parse(NOTHING),
    dispute: opened?.id ?? entryIdSchema.parse(NOTHING),
    entry: one(entries, entry)?.id ?? entryIdSchema.parse(NOTHING),
    newLot: newIds(newId),
  };
  const happening = tell(there);
  const ofDispute = 'dispute' in happening && opened !== undefined ? lotOfSubject(opened.subject) : null;
  const subjects = {
    lot: subjectOfLot(ofDispute ?? there.lot),
    arrival: LOTS,
    setup: SETUP,
    alerts: ALERTS,
    books: BOOKS,
    undo: one(entries, entry)?.subject ?? LOTS,
  };
  return { subject: subjects[rowOf(happening).about], happening };
}

function newIds(newId: (last: LotId | null) => LotId): () => LotId {
  let last: LotId | null = null;
  return () => {
    last = newId(last);
    return last;
  };
}

/** @throws RangeError when there is none. */
export function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new RangeError(`nothing at ${index}`);
  return item;
}
