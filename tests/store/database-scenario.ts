import type { LotId } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { standingCostsSchema } from '../../src/domain/setup/money-rules.ts';
import { storeSchema } from '../../src/domain/setup/store.ts';
import { closeTimeSchema } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { entryHash } from '../../src/journal/entry-hash.ts';
import { envelopeSchema } from '../../src/journal/read-entry.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import type { Backup } from '../../src/store/backup/read-backup.ts';
import { readBackup } from '../../src/store/backup/read-backup.ts';
import type { Store } from '../../src/store/store.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { openTestStore, testRandom, value } from './open-test-store.ts';

/** Fills the database `name` with a bit of everything that this version can write, and some of what a newer one could. */
export async function writeScenario(name: string): Promise<void> {
  const phone = await openTestStore({ name: `${name}-phone`, random: testRandom(2), author: 'manager' });
  value(await phone.addLots('typed', [{ facts: { make: 'Cedar', model: 'Hauler 250', notes: 'seen from the road' } }]));
  value(await phone.recordShown(['digest/2026-04-10']));

  const store = await openTestStore({ name, random: testRandom(1) });
  value(
    await store.saveSetup({
      store: storeSchema.parse({ name: 'Cottonwood Truck & Van', zone: 'America/Boise' }),
      costs: standingCostsSchema.parse({ packCents: 30_000 }),
    }),
  );
  const close = closeTimeSchema.parse({
    instant: Date.UTC(2026, 3, 11, 20),
    text: 'Sat Apr 11, 2:00 PM MDT',
    zone: 'America/Denver',
    how: 'stated-zone',
    doubts: [],
    otherwise: [],
  });
  const evidence = { miles: { from: 'page-text', text: '91,204 mi', sure: 'likely' } } as const;
  const { lots, entries } = value(
    await store.addLots(
      'page',
      [
        { facts: { make: 'Alder', model: 'Crew 1500', year: 2021, miles: 91_204, close }, evidence },
        { facts: { make: 'Birch', priceNow: cents(1_150_000), retail: { likely: cents(1_890_000) } } },
        { facts: { vin: '0EXAMPLE000000001', lotNumber: 'B-17' } },
      ],
      { batchSize: 2 },
    ),
  );
  await actAtSale(store, at(lots, 0));
  await actAfterSale(store, at(lots, 0));
  value(await store.changeLot(at(lots, 0), { set: { miles: 91_240, priceNow: cents(1_310_000) } }));
  const [emptied] = value(await store.changeLot(at(lots, 1), { clear: ['priceNow'] }));
  value(await store.dropLot(at(lots, 2)));
  if (emptied === undefined) throw new Error('no entry');
  const [undo] = value(await store.undo(emptied.id));
  if (undo === undefined) throw new Error('no entry');
  value(await store.undo(undo.id));
  value(await store.undo(at(entries, 1)));
  value(await store.recordShown([`close/${at(lots, 0)}`, 'digest/2026-04-10']));

  const brought = value(await readBackup((await phone.backup()).blob));
  value(await store.restore(withOneFromTheFuture(brought), { mode: 'merge' }));
  value(await store.noteBackup(await store.backup()));
  store.close();
  phone.close();
}

/** Paid for, disputed, with a step noted and the price adjusted. */
async function actAfterSale(store: Store, lot: LotId): Promise<void> {
  const subject = subjectOfLot(lot);
  const when = instant(Date.UTC(2026, 3, 13, 16));
  value(
    await store.append([
      { subject, happening: { kind: 'step-noted', step: 'pay', done: true, at: when, cents: cents(1_310_000) } },
    ]),
  );
  const opened = {
    side: 'ours' as const,
    reason: 'hidden-defect' as const,
    words: 'It leaks.',
    at: when,
    needs: ['Pictures'],
  };
  const [entry] = value(await store.append([{ subject, happening: { kind: 'dispute-opened', opened } }]));
  if (entry === undefined) throw new Error('no entry');
  const dispute = entry.id;
  const outcome = { ended: 'price-adjusted' as const, at: when, cents: cents(45_000) };
  value(
    await store.append([
      { subject, happening: { kind: 'dispute-changed', dispute, set: { askedCents: cents(60_000) }, clear: [] } },
      { subject, happening: { kind: 'dispute-stepped', dispute, step: { what: 'told', at: when } } },
      { subject, happening: { kind: 'dispute-closed', dispute, outcome } },
    ]),
  );
}

/** Adds, at the end of the chain in the backup, an entry such as a newer version might have written. */
function withOneFromTheFuture(backup: Backup): Backup {
  const last = backup.entries.at(-1);
  if (last === undefined) throw new Error('an empty backup');
  const entry = {
    ...last,
    id: last.id.replace(/.$/, 'Z'),
    version: 99,
    sequence: last.sequence + 1,
    subject: 'yard:7',
    happening: { kind: 'yard-swept', by: ['north', 'south'] },
    previous: last.hash,
    witness: 'a field of its own',
  };
  return { ...backup, entries: [...backup.entries, envelopeSchema.parse({ ...entry, hash: entryHash(entry) })] };
}

/** A receipt with a picture, a result, and a paper that was kept by mistake. */
async function actAtSale(store: Store, lot: LotId): Promise<void> {
  const picture = { bytes: new Uint8Array([137, 80, 78, 71]), name: 'page.png', mediaType: 'image/png' };
  const { hash } = value(await store.keepAttachment(lot, { ...picture, about: 'page-picture' }));
  const moment = instant(Date.UTC(2026, 3, 10, 14));
  value(await store.noteBid(lot, { action: 'proxy-placed', cents: cents(1_250_000), at: moment, picture: hash }));
  value(await store.noteResult(lot, { result: { ended: 'lost' }, at: moment, maxBidCents: cents(1_300_000) }));
  const paper = {
    bytes: new Blob(['not this lot'], { type: 'text/plain' }),
    name: 'note.txt',
    about: 'other',
  } as const;
  const [entry] = value(await store.keepAttachment(lot, paper)).entries;
  if (entry !== undefined) value(await store.undo(entry.id));
}
