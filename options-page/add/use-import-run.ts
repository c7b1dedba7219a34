import { useRef, useState } from 'preact/hooks';
import type { PlannedRow } from '../../src/intake/import-plan.ts';
import { importResult } from '../../src/intake/import-result.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { Change } from '../../src/journal/make-entry.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

export type ImportRun =
  | { readonly state: 'idle' }
  | { readonly state: 'running'; readonly written: number; readonly total: number }
  | {
      readonly state: 'done';
      readonly written: number;
      readonly entries: readonly EntryId[];
      readonly stopped: boolean;
      readonly undone: boolean;
      readonly fault?: string;
    };

/** Updates written in one go; each is an entry of its own, because each lot keeps its own history. */
const UPDATES_AT_ONCE = 100;

/** Keeps planned rows, with progress, a stop, and a way to take all of it back. */
export function useImportRun(from: 'file' | 'pasted') {
  const { store, say } = useWorkspace();
  const [run, setRun] = useState<ImportRun>({ state: 'idle' });
  const stopper = useRef(new AbortController());

  const start = async (rows: readonly PlannedRow[]) => {
    stopper.current = new AbortController();
    const { signal } = stopper.current;
    const { add, change } = importResult(rows, from);
    const total = add.length + change.length;
    setRun({ state: 'running', written: 0, total });
    const onProgress = (written: number) => setRun({ state: 'running', written, total });
    const added = await store.addLots(from, add, { signal, onProgress });
    const done = added.ok ? added.value : added.added;
    const entries: EntryId[] = [...done.entries];
    let written = done.lots.length;
    let fault = added.ok ? undefined : added.message;
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
    setRun({ state: 'done', written, entries, stopped: signal.aborted, undone: false, ...(fault ? { fault } : {}) });
  };

  const undo = async () => {
    if (run.state !== 'done') return;
    const undone = await store.undo(...run.entries);
    if (undone.ok) setRun({ ...run, undone: true });
    else say(undone.message);
  };

  return {
    run,
    start: (rows: readonly PlannedRow[]) => {
      start(rows).catch((error: unknown) =>
        setRun({ state: 'done', written: 0, entries: [], stopped: false, undone: false, fault: String(error) }),
      );
    },
    stop: () => stopper.current.abort(),
    undo: () => {
      undo().catch((error: unknown) => say(String(error)));
    },
  };
}
