import fc from 'fast-check';
import type { LotFacts, LotId } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { standingCostsSchema } from '../../src/domain/setup/money-rules.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import { storeSchema } from '../../src/domain/setup/store.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { Entry, EntryId, Evidence, Happening, Subject } from '../../src/journal/entry.ts';
import { makeEntry, type WritingHead } from '../../src/journal/make-entry.ts';
import { newDeviceId, nextLotId } from '../../src/journal/sortable-id.ts';
import { ALERTS, LOTS, SETUP, subjectOfLot } from '../../src/journal/subject.ts';

/** One thing that somebody does on one of the devices. Numbers choose among what is there, modulo how much there is. */
export type Step = { device: number; wait: number } & (
  | { do: 'add'; lots: LotFacts[] }
  | { do: 'change'; lot: number; set: LotFacts; clear: (keyof LotFacts)[]; evidence: Record<string, Evidence> }
  | { do: 'drop'; lot: number }
  | { do: 'setup'; name: string; pack: number | null }
  | { do: 'alerts'; keys: string[] }
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
  },
  { requiredKeys: [] },
);

const field = fc.constantFrom<keyof LotFacts>('vin', 'make', 'miles', 'priceNow', 'notes');

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
    const made = makeEntry(at(heads, step.device), change, { at: instant(time), author: 'buyer', random: random() });
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
    case 'setup': {
      const { name, pack } = step;
      const store = storeSchema.parse({ name, zone: 'America/Boise' });
      const set: Partial<Setup> =
        pack === null ? { store } : { store, costs: standingCostsSchema.parse({ packCents: pack }) };
      return { subject: SETUP, happening: { kind: 'setup-changed', set } };
    }
    case 'alerts':
      return { subject: ALERTS, happening: { kind: 'alerts-shown', keys: step.keys } };
    case 'undo': {
      if (entries.length === 0) return null;
      const { id, subject } = at(entries, step.entry % entries.length);
      return { subject, happening: { kind: 'undone', entry: id } };
    }
  }
}

/** @throws RangeError when there is none. */
export function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new RangeError(`nothing at ${index}`);
  return item;
}
