import fc from 'fast-check';
import type { StepNote } from '../../src/domain/after-sale/win-step.ts';
import type { Evidence } from '../../src/domain/lot/evidence.ts';
import type { LotFacts, LotId } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import type { Attachment } from '../../src/domain/sale/attachment.ts';
import type { BidAction } from '../../src/domain/sale/bid-action.ts';
import type { Result } from '../../src/domain/sale/result.ts';
import type { DisputeReason } from '../../src/domain/setup/after-sale-rules.ts';
import { standingCostsSchema } from '../../src/domain/setup/money-rules.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import { storeSchema } from '../../src/domain/setup/store.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { Entry, Subject } from '../../src/journal/entry.ts';
import type { Happening } from '../../src/journal/happening.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import { makeEntry, type WritingHead } from '../../src/journal/make-entry.ts';
import { newDeviceId, nextLotId } from '../../src/journal/sortable-id.ts';
import { ALERTS, LOTS, SETUP, subjectOfLot } from '../../src/journal/subject.ts';
import { type ClockHappening, clockHappening, someClose } from './clock-arbitrary.ts';
import { attachment, bidAction, result, someCents } from './sale-arbitrary.ts';

/** One thing that somebody does on one of the devices. Numbers choose among what is there, modulo how much there is. */
export type Step = { device: number; wait: number } & (
  | { do: 'add'; lots: LotFacts[] }
  | { do: 'change'; lot: number; set: LotFacts; clear: (keyof LotFacts)[]; evidence: Record<string, Evidence> }
  | { do: 'drop'; lot: number }
  | { do: 'bid'; lot: number; bid: BidAction }
  | { do: 'result'; lot: number; result: Result }
  | { do: 'file'; lot: number; attachment: Attachment }
  | { do: 'note-step'; lot: number; note: StepNote }
  | { do: 'open-dispute'; lot: number; reason: DisputeReason }
  | { do: 'go-on'; dispute: number; way: 'change' | 'step' | 'close' | 'undo-sale' }
  | { do: 'setup'; name: string; pack: number | null }
  | { do: 'alerts'; keys: string[] }
  | { do: 'void'; keys: string[] }
  | { do: 'clock'; lot: number; happening: ClockHappening }
  | { do: 'undo'; entry: number }
  | { do: 'sync'; from: number }
);

const evidence: fc.Arbitrary<Evidence> = fc.record({
  from: fc.constantFrom('typed', 'file', 'page-text'),
  text: fc.string({ maxLength: 10 }),
  sure: fc.constantFrom('certain', 'doubtful'),
});

export const someFacts: fc.Arbitrary<LotFacts> = fc.record(
  {
    vin: fc.constantFrom('0EXAMPLE000000001', '0EXAMPLE000000002'),
    make: fc.string({ unit: 'binary', maxLength: 8 }),
    miles: fc.nat(200_000),
    priceNow: fc.nat(5_000_000).map(cents),
    notes: fc.string({ maxLength: 8 }),
    close: someClose,
  },
  { requiredKeys: [] },
);

const field = fc.constantFrom<keyof LotFacts>('vin', 'make', 'miles', 'priceNow', 'notes');

const stepNote: fc.Arbitrary<StepNote> = fc.record({
  step: fc.constantFrom('pay', 'title', 'refund'),
  done: fc.boolean(),
  at: fc.constant(instant(Date.UTC(2026, 3, 12))),
  cents: someCents,
});

const action = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('add' as const),
      lots: fc.array(someFacts, { minLength: 1, maxLength: 3 }),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({
      do: fc.constant('change' as const),
      lot: fc.nat(),
      set: someFacts,
      clear: fc.uniqueArray(field, { maxLength: 2 }),
      evidence: fc.dictionary(field, evidence, { maxKeys: 2 }),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('drop' as const), lot: fc.nat() }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('bid' as const), lot: fc.nat(), bid: bidAction }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('result' as const), lot: fc.nat(), result }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('file' as const), lot: fc.nat(), attachment }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('note-step' as const), lot: fc.nat(), note: stepNote }) },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('open-dispute' as const),
      lot: fc.nat(),
      reason: fc.constantFrom('hidden-defect' as const, 'other' as const),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('go-on' as const),
      dispute: fc.nat(),
      way: fc.constantFrom('change' as const, 'step' as const, 'close' as const, 'undo-sale' as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('setup' as const),
      name: fc.string({ maxLength: 5 }),
      pack: fc.option(fc.nat(50_000)),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('alerts' as const),
      keys: fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1, maxLength: 3 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('void' as const),
      keys: fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1, maxLength: 2 }),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ do: fc.constant('clock' as const), lot: fc.nat(), happening: clockHappening }),
  },
  { weight: 4, arbitrary: fc.record({ do: fc.constant('undo' as const), entry: fc.nat() }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('sync' as const), from: fc.nat() }) },
);

/** A run of steps on `devices` devices, whose clocks also stand still and go backwards. */
export function stepsOn(devices: number, maxLength = 40): fc.Arbitrary<Step[]> {
  const where = fc.record({ device: fc.nat({ max: devices - 1 }), wait: fc.constantFrom(0, 1, 1000, -5000) });
  return fc.array(
    fc.tuple(where, action).map(([place, what]) => ({ ...place, ...what })),
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
    const change = changeOf(step, [...mine.values()], (last) => nextLotId(instant(time), last, random()));
    if (change === null) continue;
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

function changeOf(
  step: Exclude<Step, { do: 'sync' }>,
  entries: readonly Entry[],
  newId: (last: LotId | null) => LotId,
): { subject: Subject; happening: Happening } | null {
  const lots = entries.flatMap(({ happening }) => (happening.kind === 'lots-added' ? happening.lots : []));
  switch (step.do) {
    case 'add': {
      let last: LotId | null = null;
      const added = step.lots.map((facts) => {
        last = newId(last);
        return { id: last, facts, evidence: {} };
      });
      return { subject: LOTS, happening: { kind: 'lots-added', source: 'typed', lots: added } };
    }
    case 'change': {
      if (lots.length === 0) return null;
      const { set, clear, evidence: by } = step;
      const subject = subjectOfLot(at(lots, step.lot % lots.length).id);
      return { subject, happening: { kind: 'lot-changed', set, clear, evidence: by } };
    }
    case 'drop': {
      if (lots.length === 0) return null;
      return { subject: subjectOfLot(at(lots, step.lot % lots.length).id), happening: { kind: 'lot-dropped' } };
    }
    case 'bid': {
      if (lots.length === 0) return null;
      const subject = subjectOfLot(at(lots, step.lot % lots.length).id);
      return { subject, happening: { kind: 'bid-noted', bid: step.bid } };
    }
    case 'result': {
      if (lots.length === 0) return null;
      const subject = subjectOfLot(at(lots, step.lot % lots.length).id);
      const ended = instant(Date.UTC(2026, 3, 11));
      return { subject, happening: { kind: 'result-noted', result: step.result, at: ended } };
    }
    case 'file': {
      if (lots.length === 0) return null;
      const subject = subjectOfLot(at(lots, step.lot % lots.length).id);
      return { subject, happening: { kind: 'attachment-kept', attachment: step.attachment } };
    }
    case 'note-step': {
      if (lots.length === 0) return null;
      const subject = subjectOfLot(at(lots, step.lot % lots.length).id);
      return { subject, happening: { kind: 'step-noted', ...step.note } };
    }
    case 'open-dispute': {
      if (lots.length === 0) return null;
      const subject = subjectOfLot(at(lots, step.lot % lots.length).id);
      const when = instant(Date.UTC(2026, 3, 13));
      const opened = { side: 'ours' as const, reason: step.reason, words: 'It leaks.', at: when, needs: ['Pictures'] };
      return { subject, happening: { kind: 'dispute-opened', opened } };
    }
    case 'go-on': {
      const opened = entries.filter(({ happening }) => happening.kind === 'dispute-opened');
      if (opened.length === 0) return null;
      const { id, subject } = at(opened, step.dispute % opened.length);
      return { subject, happening: goingOn(id, step.way) };
    }
    case 'setup': {
      const { name, pack } = step;
      const store = storeSchema.parse({ name, zone: 'America/Boise' });
      const set: Partial<Setup> =
        pack === null ? { store } : { store, costs: standingCostsSchema.parse({ packCents: pack }) };
      return { subject: SETUP, happening: { kind: 'setup-changed', set } };
    }
    case 'clock':
      if (lots.length === 0) return null;
      return { subject: subjectOfLot(at(lots, step.lot % lots.length).id), happening: step.happening };
    case 'void':
      return { subject: ALERTS, happening: { kind: 'alerts-voided', keys: step.keys } };
    case 'alerts':
      return { subject: ALERTS, happening: { kind: 'alerts-shown', keys: step.keys } };
    case 'undo': {
      if (entries.length === 0) return null;
      const { id, subject } = at(entries, step.entry % entries.length);
      return { subject, happening: { kind: 'undone', entry: id } };
    }
  }
}

function goingOn(dispute: EntryId, way: 'change' | 'step' | 'close' | 'undo-sale'): Happening {
  const when = instant(Date.UTC(2026, 3, 14));
  switch (way) {
    case 'change':
      return { kind: 'dispute-changed', dispute, set: { askedCents: cents(50_000) }, clear: ['next'] };
    case 'step':
      return { kind: 'dispute-stepped', dispute, step: { what: 'got', need: 'Pictures', at: when } };
    case 'close':
      return { kind: 'dispute-closed', dispute, outcome: { ended: 'dropped', at: when } };
    case 'undo-sale':
      return { kind: 'dispute-closed', dispute, outcome: { ended: 'sale-undone', at: when, cents: cents(-20_000) } };
  }
}

/** @throws RangeError when there is none. */
export function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new RangeError(`nothing at ${index}`);
  return item;
}
