import { createHash } from 'node:crypto';
import { demoVin } from '../../../src/demo/demo-vin.ts';
import { type LotId, lotIdSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import { type Change, makeEntry, SALT_BYTES, type WritingHead } from '../../../src/journal/make-entry.ts';
import { ID_RANDOM_BYTES, newDeviceId, nextLotId } from '../../../src/journal/sortable-id.ts';
import { LOTS, subjectOfLot } from '../../../src/journal/subject.ts';
import { BACKUP_FORMAT } from '../../../src/store/backup/backup-format.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import type { Store } from '../../../src/store/store.ts';
import { Clock, computer, freshMachine, seededBytes, value } from './machine.ts';

/**
 * A journal whose earliest entries have no salt, as the first release wrote them: two lots, the second of which is
 * nobody's business, so that a pack of the first holds places of the chain whose content nobody can show. No function of
 * the program writes such entries to a store any more, so they come in by a backup.
 */
export async function oldJournal(): Promise<{ store: Store; lot: LotId; noted: Record<string, string>; text: string }> {
  freshMachine();
  const clock = new Clock(Date.UTC(2026, 3, 9, 16));
  const look = clock.seenFrom(0);
  const random = seededBytes('old journal');
  const lot = nextLotId(look(), null, random(ID_RANDOM_BYTES));
  const other = nextLotId(look(), lot, random(ID_RANDOM_BYTES));
  const added = (id: LotId, serial: number): Change => ({
    subject: LOTS,
    happening: {
      kind: 'lots-added',
      source: 'typed',
      lots: [{ id, facts: { vin: demoVin('4HJ', 2020, serial), make: 'Quillback', model: 'Loadmate' }, evidence: {} }],
    },
  });
  const about = (id: LotId, happening: Happening): Change => ({ subject: subjectOfLot(id), happening });
  const price = (amount: number): Happening => ({
    kind: 'lot-changed',
    set: { priceNow: cents(amount * 100) },
    clear: [],
    evidence: {},
  });
  const bid = (amount: number): Happening => ({
    kind: 'bid-noted',
    bid: { action: 'proxy-placed', cents: cents(amount * 100), at: look() },
  });
  const unsalted = [
    added(other, 31),
    added(lot, 32),
    about(other, price(8000)),
    about(lot, price(6000)),
    about(other, bid(8500)),
    about(lot, bid(6600)),
  ];
  const salted = [
    about(other, { kind: 'result-noted', result: { ended: 'lost' }, at: look() }),
    about(lot, { kind: 'bid-noted', bid: { action: 'proxy-raised', cents: cents(710_000), at: look() } }),
    about(lot, { kind: 'result-noted', result: { ended: 'won', hammerCents: cents(690_000) }, at: look() }),
    about(other, price(8200)),
    about(lot, { kind: 'step-noted', step: 'pay', done: true, at: look() }),
  ];
  let head: WritingHead = { device: newDeviceId(random(10)), sequence: 0, hash: '', lastId: null };
  const lines: string[] = [];
  const noted: Record<string, string> = {};
  for (const [i, change] of [...unsalted, ...salted].entries()) {
    clock.later(7);
    const salt = i < unsalted.length ? {} : { salt: random(SALT_BYTES) };
    const made = makeEntry(head, change, { at: look(), author: 'buyer', random: random(ID_RANDOM_BYTES), ...salt });
    head = made.head;
    lines.push(JSON.stringify(made.entry));
    noted[i < unsalted.length ? 'buyer-thursday' : 'buyer-last'] = `${head.device}:${head.sequence}:${head.hash}`;
  }
  const text = closed(lines, { device: head.device, sequence: head.sequence, hash: head.hash }, look());
  const store = await computer(clock, 'reader');
  value(await store.restore(value(await readBackup(new Blob([text]))), { mode: 'merge' }));
  return { store, lot: lotIdSchema.parse(lot), noted, text };
}

/** A backup as earlier releases wrote it, before its ends were signed. */
function closed(lines: readonly string[], head: object, exportedAt: number): string {
  const counts = { entries: lines.length, lots: 2 };
  const header = { format: BACKUP_FORMAT, version: 2, exportedAt, counts, heads: [head] };
  const text = [JSON.stringify(header), ...lines].map((line) => `${line}\n`).join('');
  return `${text}${JSON.stringify({ sha256: createHash('sha256').update(text).digest('hex') })}\n`;
}
