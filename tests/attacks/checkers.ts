import { IDBFactory } from 'fake-indexeddb';
import { type Outcome, ok } from '../../src/domain/outcome.ts';
import { NOTHING_NOTED, type Noted, readNoted } from '../../src/journal/noted.ts';
import { NOT_SHOWN, sayProved } from '../../src/journal/pack/say-pack-check.ts';
import { verifyPack } from '../../src/journal/pack/verify-pack.ts';
import { type Backup, readBackup } from '../../src/store/backup/read-backup.ts';
import { BACKUP_NOT_SHOWN, sayProvedOfBackup } from '../../src/store/backup/say-backup.ts';
import type { Store } from '../../src/store/store.ts';
import { packMoments } from '../../src/views/history/pack-moments.ts';
import { openTestStore, value } from '../store/open-test-store.ts';
import { type Checker, loadScript, type Result } from './checker.ts';

/** The program, with the words that its screens say. */
export const program: Checker = { name: 'program', checkPack, checkBackup, checkBackupBesideJournal };

/** The script that travels in every pack. */
export const script: Checker = {
  name: 'script',
  async checkPack(bytes, noted) {
    const { look } = await loadScript();
    const found = look(Buffer.from(bytes).toString('utf8'), noted === undefined ? [] : [noted]);
    if (found.refused !== undefined) return refused(found.refused);
    const { wrong, told, entries, said } = found;
    return result(wrong, told, { said: said.join('\n'), account: entries.join('\n') });
  },
};

const refused = (said: string): Result => ({ verdict: 'refused', findings: [], told: [], said });

const result = (
  findings: readonly string[],
  told: readonly string[],
  { said, account }: { readonly said: string; readonly account: string },
): Result => ({ verdict: findings.length > 0 ? 'broken' : 'passes', findings, told, said, account });

const notedOf = (text: string | undefined): Outcome<Noted> =>
  text === undefined ? ok(NOTHING_NOTED) : readNoted(text);

async function checkPack(bytes: Uint8Array, text: string | undefined): Promise<Result> {
  const noted = notedOf(text);
  if (!noted.ok) return refused(noted.message);
  // As the screen reads a file: a byte order mark goes, and what is no UTF-8 is replaced.
  const checked = await verifyPack(await new Blob([new Uint8Array(bytes)]).text(), noted.value);
  if (!checked.ok) return refused(checked.message);
  const { findings, told, lines, files, head } = checked.value;
  const shown = findings.length > 0 ? findings : [...sayProved(checked.value), ...NOT_SHOWN];
  const moments = packMoments(lines, { lot: head.lot, say: (at) => new Date(at).toISOString() });
  return result(findings, told, {
    said: [...shown, ...told].join('\n'),
    account: JSON.stringify([moments, [...files.keys()]]),
  });
}

async function checkBackup(bytes: Uint8Array, text: string | undefined): Promise<Result> {
  const noted = notedOf(text);
  if (!noted.ok) return refused(noted.message);
  const read = await readBackup(new Blob([new Uint8Array(bytes)]), noted.value);
  return read.ok ? ofBackup(read.value, { findings: [], told: [] }) : refused(read.message);
}

function ofBackup(backup: Backup, more: { readonly findings: readonly string[]; readonly told: readonly string[] }) {
  const findings = [...backup.faults, ...backup.findings.map(({ message }) => message), ...more.findings];
  const told = [...backup.told, ...more.told];
  const shown = findings.length > 0 ? findings : [...sayProvedOfBackup(backup), ...BACKUP_NOT_SHOWN];
  const { counts, heads } = backup.header;
  return result(findings, told, {
    said: [...shown, ...told].join('\n'),
    account: JSON.stringify([counts, heads, [...backup.files.keys()]]),
  });
}

/** The store that a backup is held beside; looking at what a restore would do writes nothing, so that one does for all. */
let journal: { readonly own: Uint8Array; readonly store: Store } | undefined;

async function journalOf(own: Uint8Array): Promise<Store> {
  if (journal !== undefined && Buffer.compare(journal.own, own) === 0) return journal.store;
  journal?.store.close();
  globalThis.indexedDB = new IDBFactory();
  const store = await openTestStore();
  value(await store.restore(value(await readBackup(new Blob([new Uint8Array(own)]))), { mode: 'merge' }));
  journal = { own, store };
  return store;
}

async function checkBackupBesideJournal(bytes: Uint8Array, own: Uint8Array): Promise<Result> {
  const store = await journalOf(own);
  const read = await readBackup(new Blob([new Uint8Array(bytes)]), { heads: [], keys: await store.knownKeys() });
  if (!read.ok) return refused(read.message);
  const { conflict, newPlaces } = await store.previewRestore(read.value);
  return ofBackup(read.value, {
    findings: conflict === null ? [] : [conflict.message],
    told: newPlaces === '' ? [] : [`New here: ${newPlaces}.`],
  });
}
