import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { type ChainHead, writeHead } from '../../../src/journal/chain-head.ts';
import { stampRequest } from '../../../src/journal/stamp/stamp-request.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import { sayProvedOfBackup } from '../../../src/store/backup/say-backup.ts';
import { takeStamp } from '../../../src/store/signing/take-stamp.ts';
import type { Store } from '../../../src/store/store.ts';
import { Authority } from '../../journal/stamp-authority.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';

// OpenSSL is the authority, and the judge of what it gave.
const folder = mkdtempSync(join(tmpdir(), 'taken-'));
afterAll(() => rmSync(folder, { recursive: true }));
let office: Authority;
beforeAll(() => {
  office = new Authority(folder, { name: 'Invented Time Office', key: 'ec' });
});
beforeEach(freshBrowser);

async function written(store: Store, price: number): Promise<ChainHead> {
  value(await store.addLots('typed', [{ facts: { vin: '1LX4P7C59N0000001', priceNow: cents(price) } }]));
  const { heads, device } = await store.about();
  const head = heads.find((one) => one.device === device);
  if (head === undefined) throw new Error('nothing was written');
  return head;
}

test('an answer that comes back later is known by what it is of, and is the same that OpenSSL takes', async () => {
  const store = await openTestStore();
  const first = await written(store, 900_000);
  const request = await stampRequest(first);
  const latest = await written(store, 950_000);
  expect(latest.sequence).toBeGreaterThan(first.sequence);
  const answer = office.answer(request);
  office.verify(answer, writeHead(first));
  const taken = value(await takeStamp(store, answer));
  expect(taken).toMatchObject({ ...first, authority: 'Invented Time Office, Invented' });
  expect(Math.abs(taken.at - Date.now())).toBeLessThan(120_000);
  expect(await store.stamps()).toMatchObject([first]);
  // The same answer twice is one stamp.
  value(await takeStamp(store, answer));
  expect(await store.stamps()).toHaveLength(1);
});

test('a stamp goes with the backup into another browser, and the check says when and by whom', async () => {
  const store = await openTestStore();
  const head = await written(store, 900_000);
  value(await takeStamp(store, office.answer(await stampRequest(head))));
  const backup = value(await readBackup((await store.backup()).blob));
  expect(backup.faults).toEqual([]);
  expect(sayProvedOfBackup(backup).filter((words) => words.includes('Invented Time Office'))).toHaveLength(1);
  const other = await openTestStore({ name: 'other' });
  value(await other.restore(backup, { mode: 'merge' }));
  expect(await other.stamps()).toEqual(await store.stamps());
  // Where a replacement takes the entry away, its stamp goes too: a backup must not name what it has not.
  const elsewhere = await openTestStore({ name: 'elsewhere', random: testRandom(7) });
  await written(elsewhere, 800_000);
  value(await other.restore(value(await readBackup((await elsewhere.backup()).blob)), { mode: 'replace' }));
  expect(await other.stamps()).toEqual([]);
});

test('what is no answer, or is of nothing here, is refused with what to do, and changes nothing', async () => {
  const store = await openTestStore();
  const head = await written(store, 900_000);
  const text = new Uint8Array(new TextEncoder().encode('not an answer'));
  expect(await takeStamp(store, text)).toMatchObject({ ok: false, reason: 'not-an-answer' });
  expect(await takeStamp(store, new Uint8Array(60_000))).toMatchObject({ ok: false, reason: 'too-large' });
  const elsewhere = office.answer(await stampRequest({ ...head, sequence: head.sequence + 7 }));
  expect(await takeStamp(store, elsewhere)).toMatchObject({ ok: false, reason: 'no-such-entry' });
  const cut = office.answer(await stampRequest(head)).slice(0, -40);
  expect((await takeStamp(store, cut)).ok).toBe(false);
  expect(await takeStamp(store, office.refusal(writeHead(head)))).toMatchObject({ ok: false, reason: 'refused-there' });
  expect(await store.stamps()).toEqual([]);
});
