import { useRef, useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { RestorePreview } from '../../src/store/backup/compare-with-journal.ts';
import { type Backup, readBackup } from '../../src/store/backup/read-backup.ts';
import type { RestoreOptions } from '../../src/store/backup/restore.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';

type State =
  | { readonly step: 'ask' }
  | { readonly step: 'reading' }
  | { readonly step: 'refused'; readonly name: string; readonly message: string }
  | { readonly step: 'choose'; readonly name: string; readonly backup: Backup; readonly preview: RestorePreview };

/** The same file in again: read to its end and checked before anything here is touched. */
export function RestorePart() {
  const { store, setup, say } = useWorkspace();
  const [state, setState] = useState<State>({ step: 'ask' });
  const input = useRef<HTMLInputElement>(null);

  const read = async (file: File) => {
    setState({ step: 'reading' });
    try {
      const backup = await readBackup(file);
      if (!backup.ok) return setState({ step: 'refused', name: file.name, message: backup.message });
      const preview = await store.previewRestore(backup.value);
      setState({ step: 'choose', name: file.name, backup: backup.value, preview });
    } catch (error) {
      setState({ step: 'refused', name: file.name, message: error instanceof Error ? error.message : String(error) });
    }
  };
  const restore = async (backup: Backup, mode: RestoreOptions['mode']) => {
    const restored = await store.restore(backup, { mode, despiteFindings: backup.findings.length > 0 });
    if (!restored.ok) return setState({ step: 'refused', name: 'The backup', message: restored.message });
    const { added, same, removed, files } = restored.value;
    say(
      `${countWords(added, 'entry', 'entries')} restored, ${same.toLocaleString('en-US')} were already here` +
        (files > 0 ? `, with ${countWords(files, 'attached file', 'attached files')}` : '') +
        (removed > 0 ? `, ${removed.toLocaleString('en-US')} were deleted.` : '.'),
    );
    setState({ step: 'ask' });
    if (input.current) input.current.value = '';
  };

  return (
    <section class="panel stack">
      <h2>Restore from a file</h2>
      <p>The whole file is checked first. Nothing changes until you choose below.</p>
      <label class="field">
        <span class="label">Backup file</span>
        <input
          ref={input}
          type="file"
          accept=".jsonl,.json"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) read(file);
          }}
        />
      </label>
      {state.step === 'reading' && <p role="status">Reading and checking the file…</p>}
      {state.step === 'refused' && (
        <p class="note warning" role="alert">
          <strong>{state.name} was not restored.</strong> {state.message} Nothing here was changed.
        </p>
      )}
      {state.step === 'choose' && (
        <div class="note stack" role="status">
          <p>
            {state.name} is complete: {countWords(state.backup.header.counts.entries, 'entry', 'entries')},{' '}
            {countWords(state.backup.header.counts.lots, 'lot', 'lots')}, saved{' '}
            {sayTime(state.backup.header.exportedAt, setup.store.zone)}. {state.preview.added.toLocaleString('en-US')}{' '}
            of its entries are new here.
          </p>
          <FilesNote backup={state.backup} />
          {state.backup.findings.length > 0 && (
            <div class="note warning stack">
              <p>The file is as it was written, but its chain is broken:</p>
              <ul class="plain-list">
                {state.backup.findings.slice(0, 5).map((finding) => (
                  <li key={finding.message}>{finding.message}</li>
                ))}
              </ul>
            </div>
          )}
          {state.preview.conflict && <p class="note warning">{state.preview.conflict.message}</p>}
          <div class="row">
            <button
              type="button"
              class="main"
              disabled={state.preview.conflict !== null}
              onClick={() => restore(state.backup, 'merge')}
            >
              Add what is new
            </button>
            {state.preview.onlyHere > 0 && (
              <button type="button" onClick={() => restore(state.backup, 'replace')}>
                Replace everything and delete {countWords(state.preview.onlyHere, 'entry', 'entries')} that only this
                browser has
              </button>
            )}
            <button type="button" class="plain" onClick={() => setState({ step: 'ask' })}>
              Change nothing
            </button>
          </div>
        </div>
      )}
    </section>
  );
}

/** How many attached files come with it, and how many of those that it names are missing. */
function FilesNote({ backup: { files, named } }: { backup: Backup }) {
  const missing = [...named].filter((hash) => !files.has(hash)).length;
  return (
    <>
      {files.size > 0 && <p>With {countWords(files.size, 'attached file', 'attached files')}, each checked.</p>}
      {missing > 0 && (
        <p class="note warning">
          {countWords(missing, 'attached file is', 'attached files are')} named in the backup but missing from it:
          damaged on the disk when the backup was saved. What is already here stays.
        </p>
      )}
    </>
  );
}
