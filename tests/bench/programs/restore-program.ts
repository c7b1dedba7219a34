import { DEMO_ZONE, demoSetup } from '../../../src/demo/demo-setup.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import type { Change } from '../../../src/journal/make-entry.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { openStore } from '../../../src/store/open-store.ts';
import type { Store } from '../../../src/store/store.ts';

const random = (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes));
const LOTS_A_LIST = 250;
const ENTRIES_AT_ONCE = 500;
const PICTURE_BYTES = 60_000;

/** What the benchmark of a restore does in a page of the extension without any screen. */
const program = {
  /** Lots in lists, then changes of their price in turns, `entries` in all; and pictures of some lots. */
  async fill(name: string, entries: number, pictures: number): Promise<void> {
    const store = await open(name);
    await store.saveSetup(demoSetup(dateIn(DEMO_ZONE, instant(Date.now()))));
    const lots: LotId[] = [];
    for (let list = 0; list < entries / LOTS_A_LIST / 4; list++) {
      const rows = Array.from({ length: LOTS_A_LIST }, (_, i) => ({
        facts: { lotNumber: `${list}-${i}`, make: 'Alder', model: 'Carrier', notes: 'Fleet unit, keys with the gate' },
      }));
      lots.push(...value(await store.addLots('file', rows)).lots);
    }
    await changeAll(store, lots, entries, 0);
    for (let i = 0; i < pictures; i++) {
      const lot = lots[(i * 7) % lots.length];
      if (lot === undefined) throw new Error('there is no lot to keep a picture with');
      const bytes = random(PICTURE_BYTES);
      value(await store.keepAttachment(lot, { bytes, name: `${i}.png`, mediaType: 'image/png', about: 'other' }));
    }
    store.close();
  },

  /** Changes the price of every lot, by `offset` cents otherwise than anybody else. */
  async change(name: string, offset: number): Promise<void> {
    const store = await open(name);
    const lots = (await store.allLots()).map(({ id }) => id);
    await changeAll(store, lots, lots.length, offset);
    store.close();
  },

  /** Saves a backup as the Backup screen does. */
  async save(name: string): Promise<void> {
    const store = await open(name);
    const { blob } = await store.backup();
    const link = document.createElement('a');
    link.href = URL.createObjectURL(blob);
    link.download = 'backup.jsonl';
    link.click();
    store.close();
  },
};

async function changeAll(store: Store, lots: readonly LotId[], entries: number, offset: number): Promise<void> {
  for (let from = 0; from < entries; from += ENTRIES_AT_ONCE) {
    const changes: Change[] = [];
    for (let i = from; i < Math.min(from + ENTRIES_AT_ONCE, entries); i++) {
      const lot = lots[i % lots.length];
      if (lot === undefined) throw new Error('there is no lot to change');
      const priceNow = cents(500_000 + i * 100 + offset);
      const happening: Happening = { kind: 'lot-changed', set: { priceNow }, clear: [], evidence: {} };
      changes.push({ subject: subjectOfLot(lot), happening });
    }
    value(await store.append(changes));
  }
}

async function open(name: string): Promise<Store> {
  return value(await openStore({ name, now: () => instant(Date.now()), random }));
}

function value<Value>(
  outcome: { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly message: string },
): Value {
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}

declare global {
  interface Window {
    restoreProgram: typeof program;
  }
}
window.restoreProgram = program;
