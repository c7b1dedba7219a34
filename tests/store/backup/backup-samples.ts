import { expect } from 'vitest';
import { entryHash, hashOfText } from '../../../src/journal/entry-hash.ts';
import { type Backup, readBackup } from '../../../src/store/backup/read-backup.ts';
import type { Store } from '../../../src/store/store.ts';
import { openTestStore, value } from '../open-test-store.ts';

export async function backupText(store: Store): Promise<string> {
  return (await store.backup()).blob.text();
}
export const read = (text: string | Blob) => readBackup(text instanceof Blob ? text : new Blob([text]));
export const refused = async (text: string | Blob): Promise<{ reason: string; message: string }> => {
  const backup = await read(text);
  if (backup.ok) throw new Error('it was not refused');
  return backup;
};

/** The lines of a file with `count` lots, one an entry: a header, the entries, the closing line. */
export async function sample(count = 3): Promise<string[]> {
  const store = await openTestStore({ name: 'sample' });
  const rows = Array.from({ length: count }, (_, i) => ({ facts: { lotNumber: `${i}` } }));
  value(await store.addLots('file', rows, { batchSize: 1 }));
  const lines = (await backupText(store)).split('\n');
  expect(lines.pop()).toBe('');
  store.close();
  return lines;
}

/** Closes a file that was tampered with, as one who knows the format would. */
export function closed(lines: readonly string[]): string {
  const body = lines
    .slice(0, -1)
    .map((line) => `${line}\n`)
    .join('');
  return `${body}${JSON.stringify({ sha256: hashOfText(body) })}\n`;
}

export const tamperedLine = (
  line: string,
  change: (entry: Record<string, unknown>) => void,
  rehash = false,
): string => {
  const entry: Record<string, unknown> = JSON.parse(line);
  change(entry);
  if (rehash) entry.hash = entryHash(entry);
  return JSON.stringify(entry);
};

export const asRead = async (store: Store): Promise<Backup> => value(await readBackup((await store.backup()).blob));
export const lotNumbers = async (store: Store) => (await store.allLots()).map((lot) => lot.facts.lotNumber).sort();
export const oneLot = async (store: Store, lotNumber: string) =>
  value(await store.addLots('typed', [{ facts: { lotNumber } }]));
