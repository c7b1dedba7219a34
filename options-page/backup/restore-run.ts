import { pauseForPage } from '../../src/intake/pause.ts';
import type { Noted } from '../../src/journal/noted.ts';
import type { RestorePreview } from '../../src/store/backup/compare-with-journal.ts';
import { type Backup, readBackup } from '../../src/store/backup/read-backup.ts';
import type { Restored, RestoreOptions } from '../../src/store/backup/restore.ts';
import type { LongWork } from '../../src/store/journal/slices.ts';
import type { Store } from '../../src/store/store.ts';
import { keptState } from '../../src/ui/kept-state.ts';
import { type LongRun, showLongRun } from '../../src/ui/long-run.tsx';

/** How far a restore is. It goes on while another screen is shown. */
export type RestoreRun =
  | { readonly step: 'ask' }
  | { readonly step: 'busy'; readonly run: LongRun }
  | { readonly step: 'stopped'; readonly name: string }
  | { readonly step: 'refused'; readonly name: string; readonly message: string }
  | { readonly step: 'choose'; readonly name: string; readonly backup: Backup; readonly preview: RestorePreview }
  | { readonly step: 'done'; readonly name: string; readonly restored: Restored };

export const restoreRun = keptState<RestoreRun>({ step: 'ask' });

/** Of several files that were chosen, the last one counts. */
let current = new AbortController();

/** Reads a file to its end and compares it with what is here and with what was noted; nothing is touched. */
export function readForRestore(store: Store, file: File, { heads, keys }: Noted): Promise<void> {
  return attended(file.name, async (work) => {
    const noted = { heads, keys: [...keys, ...(await store.knownKeys())] };
    const backup = await readBackup(file, noted, {
      ...work(`Reading and checking ${file.name}`),
      pause: pauseForFrame,
    });
    if (!backup.ok) return { step: 'refused', name: file.name, message: backup.message };
    const preview = await store.previewRestore(backup.value, work('Comparing it with what is here'));
    return { step: 'choose', name: file.name, backup: backup.value, preview };
  });
}

/** Brings in what was read: all of it, or nothing when it is refused or stopped. */
export function restoreNow(store: Store, name: string, backup: Backup, mode: RestoreOptions['mode']): Promise<void> {
  return attended(name, async (work) => {
    const despiteFindings = backup.findings.length > 0;
    const restored = await store.restore(backup, { mode, despiteFindings, ...work(`Restoring ${name}`) });
    return restored.ok
      ? { step: 'done', name, restored: restored.value }
      : { step: 'refused', name, message: restored.message };
  });
}

/** Until the next frame is drawn; a page that nobody sees draws none. */
async function pauseForFrame(): Promise<void> {
  if (document.hidden) return pauseForPage();
  await new Promise<void>((resolve) => {
    requestAnimationFrame(() => resolve());
    // It may be hidden meanwhile.
    setTimeout(resolve, LONGEST_FRAME_MS);
  });
}
const LONGEST_FRAME_MS = 100;

/** Ends what is under way, and forgets the file. */
export function leaveRestore(): void {
  current.abort();
  showLongRun(null);
  restoreRun.set({ step: 'ask' });
}

async function attended(
  name: string,
  work: (named: (label: string) => LongWork) => Promise<RestoreRun>,
): Promise<void> {
  current.abort();
  const mine = new AbortController();
  current = mine;
  const { signal } = mine;
  const show = (run: LongRun) => {
    if (current !== mine) return;
    restoreRun.set({ step: 'busy', run });
    showLongRun({ ...run, hash: '#/backup' });
  };
  const named = (label: string): LongWork => {
    const stop = () => mine.abort();
    show({ label, share: 0, stop });
    return { signal, onShare: (share) => show({ label, share, stop }) };
  };
  const next = await work(named).catch(
    (error: unknown): RestoreRun => ({
      ...{ step: 'refused', name },
      message: error instanceof Error ? error.message : String(error),
    }),
  );
  if (current !== mine) return;
  showLongRun(null);
  // What was finished before the stop was heard counts.
  restoreRun.set(signal.aborted && next.step !== 'done' ? { step: 'stopped', name } : next);
}
