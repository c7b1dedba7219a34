import type { PlannedRow } from '../../src/intake/import-plan.ts';
import { importResult } from '../../src/intake/import-result.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { Change } from '../../src/journal/make-entry.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import type { Store } from '../../src/store/store.ts';
import { keptState } from '../../src/ui/kept-state.ts';
import { type LongRun, showLongRun } from '../../src/ui/long-run.tsx';
import { countWords } from '../../src/views/words/count-words.ts';

/** How far an import is. It goes on while another screen is shown. */
export type ImportRun =
  | { readonly state: 'idle' }
  | { readonly state: 'running'; readonly run: LongRun }
  | {
      readonly state: 'done';
      readonly written: number;
      readonly entries: readonly EntryId[];
      readonly stopped: boolean;
      readonly undone: boolean;
      readonly fault?: string;
    };

export const importRun = keptState<ImportRun>({ state: 'idle' });

export interface ImportWanted {
  readonly name: string;
  readonly rows: readonly PlannedRow[];
  readonly from: 'file' | 'pasted';
}

/** Updates written in one go; each is an entry of its own, because each lot keeps its own history. */
const UPDATES_AT_ONCE = 100;

/** Saves planned rows, with progress and a stop. What came of it stands in `importRun`, and is answered as a sentence. */
export async function startImport(store: Store, { name, rows, from }: ImportWanted): Promise<string> {
  const stopper = new AbortController();
  const { signal } = stopper;
  const { add, change } = importResult(rows, from);
  const total = add.length + change.length;
  const onProgress = (written: number) => {
    const words = `${written.toLocaleString('en-US')} of ${total.toLocaleString('en-US')}`;
    const run = { label: `Saving ${name}`, share: written / total, words, stop: () => stopper.abort() };
    importRun.set({ state: 'running', run });
    showLongRun({ ...run, hash: '#/add' });
  };
  onProgress(0);
  const entries: EntryId[] = [];
  let written = 0;
  let fault: string | undefined;
  try {
    const added = await store.addLots(from, add, { signal, onProgress });
    const done = added.ok ? added.value : added.added;
    entries.push(...done.entries);
    written = done.lots.length;
    fault = added.ok ? undefined : added.message;
    for (let i = 0; i < change.length && fault === undefined && !signal.aborted; i += UPDATES_AT_ONCE) {
      const changes = change.slice(i, i + UPDATES_AT_ONCE).map(
        ({ id, set, evidence }): Change => ({
          subject: subjectOfLot(id),
          happening: { kind: 'lot-changed', set, clear: [], evidence: { ...evidence } },
        }),
      );
      const kept = await store.append(changes);
      if (!kept.ok) fault = kept.message;
      else {
        for (const entry of kept.value) entries.push(entry.id);
        written += changes.length;
        onProgress(written);
      }
    }
  } catch (error) {
    fault = String(error);
  }
  showLongRun(null);
  importRun.set({
    ...{ state: 'done', written, entries, stopped: signal.aborted, undone: false },
    ...(fault === undefined ? {} : { fault }),
  });
  return `${name}: ${countWords(written, 'lot is', 'lots are')} on the list.${fault === undefined ? '' : ` ${fault}`}`;
}

/** Takes back all that the import wrote. Answers with a sentence where it could not. */
export async function undoImport(store: Store): Promise<string | null> {
  const run = importRun.get();
  if (run.state !== 'done') return null;
  const undone = await store.undo(...run.entries);
  if (!undone.ok) return undone.message;
  importRun.set({ ...run, undone: true });
  return null;
}
