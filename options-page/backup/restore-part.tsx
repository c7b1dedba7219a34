import { useRef, useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { NOTHING_NOTED, type Noted } from '../../src/journal/noted.ts';
import type { RestorePreview } from '../../src/store/backup/compare-with-journal.ts';
import { type Backup, readBackup } from '../../src/store/backup/read-backup.ts';
import type { RestoreOptions } from '../../src/store/backup/restore.ts';
import { NotedInput } from '../../src/ui/inputs/noted-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { BackupVerdict, isWrong } from './backup-verdict.tsx';

type State =
  | { readonly step: 'ask' }
  | { readonly step: 'reading' }
  | { readonly step: 'refused'; readonly name: string; readonly message: string }
  | { readonly step: 'choose'; readonly name: string; readonly backup: Backup; readonly preview: RestorePreview };

/** The same file in again: read to its end, and held against what was noted, before anything here is touched. */
export function RestorePart() {
  const { store, setup, say } = useWorkspace();
  const [state, setState] = useState<State>({ step: 'ask' });
  const [noted, setNoted] = useState<Noted>();
  const [file, setFile] = useState<File>();
  const input = useRef<HTMLInputElement>(null);

  const read = async (from: File, { heads, keys }: Noted) => {
    setState({ step: 'reading' });
    try {
      const backup = await readBackup(from, { heads, keys: [...keys, ...(await store.knownKeys())] });
      if (!backup.ok) return setState({ step: 'refused', name: from.name, message: backup.message });
      const preview = await store.previewRestore(backup.value);
      setState({ step: 'choose', name: from.name, backup: backup.value, preview });
    } catch (error) {
      setState({ step: 'refused', name: from.name, message: error instanceof Error ? error.message : String(error) });
    }
  };
  const leave = () => {
    setState({ step: 'ask' });
    setFile(undefined);
    if (input.current) input.current.value = '';
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
    leave();
  };

  return (
    <section class="panel stack">
      <h2>Restore from a file</h2>
      <p>The whole file is checked first. Nothing changes until you choose below.</p>
      <NotedInput
        value={noted}
        onCommit={(next) => {
          setNoted(next);
          // A file that is being looked at is held against it at once.
          if (file !== undefined && state.step !== 'ask') read(file, next ?? NOTHING_NOTED);
        }}
      />
      <label class="field">
        <span class="label">Backup file</span>
        <input
          ref={input}
          type="file"
          accept=".jsonl,.json"
          onChange={(event) => {
            const chosen = event.currentTarget.files?.[0];
            setFile(chosen);
            if (chosen) read(chosen, noted ?? NOTHING_NOTED);
          }}
        />
      </label>
      {state.step === 'reading' && <p role="status">Reading and checking the file…</p>}
      {state.step === 'refused' && (
        <p class="note warning" role="alert">
          <strong>{state.name} was not taken.</strong> {state.message} Nothing here was changed.
        </p>
      )}
      {state.step === 'choose' && (
        <div class="note stack" role="status">
          <BackupVerdict
            name={state.name}
            backup={state.backup}
            preview={state.preview}
            savedAt={sayTime(state.backup.header.exportedAt, setup.store.zone)}
          />
          <div class="row">
            <button
              type="button"
              class="main"
              disabled={state.preview.conflict !== null}
              onClick={() => restore(state.backup, 'merge')}
            >
              {isWrong(state.backup) ? 'Add what is new anyway' : 'Add what is new'}
            </button>
            {state.preview.onlyHere > 0 && (
              <button type="button" onClick={() => restore(state.backup, 'replace')}>
                Replace everything: throw away {countWords(state.preview.onlyHere, 'entry', 'entries')} that only this
                browser has
              </button>
            )}
            <button type="button" class="plain" onClick={leave}>
              Change nothing
            </button>
          </div>
        </div>
      )}
    </section>
  );
}
