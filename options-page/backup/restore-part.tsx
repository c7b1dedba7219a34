import { useRef, useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { NOTHING_NOTED, type Noted } from '../../src/journal/noted.ts';
import { NotedInput } from '../../src/ui/inputs/noted-input.tsx';
import { RunBar } from '../../src/ui/long-run.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { BackupVerdict, isWrong } from './backup-verdict.tsx';
import { ChangesNote } from './changes-note.tsx';
import { leaveRestore, type RestoreRun, readForRestore, restoreNow, restoreRun } from './restore-run.ts';

/** The same file in again: read to its end, and held against what was noted, before anything here is touched. */
export function RestorePart() {
  const { store } = useWorkspace();
  const run = restoreRun.use();
  const [noted, setNoted] = useState<Noted>();
  const [file, setFile] = useState<File>();
  const input = useRef<HTMLInputElement>(null);
  const leave = () => {
    leaveRestore();
    setFile(undefined);
    if (input.current) input.current.value = '';
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
          if (file !== undefined && !isTaken(run)) readForRestore(store, file, next ?? NOTHING_NOTED);
        }}
      />
      <label class="field">
        <span class="label">Backup file</span>
        <input
          ref={input}
          type="file"
          accept=".jsonl,.json"
          disabled={run.step === 'busy'}
          onChange={(event) => {
            const chosen = event.currentTarget.files?.[0];
            setFile(chosen);
            if (chosen) readForRestore(store, chosen, noted ?? NOTHING_NOTED);
          }}
        />
      </label>
      <Step run={run} onLeave={leave} />
    </section>
  );
}

/** Whether the file is past the moment at which a fingerprint could still hold it up. */
const isTaken = ({ step }: RestoreRun) => step === 'busy' || step === 'done' || step === 'ask';

function Step({ run, onLeave }: { run: RestoreRun; onLeave: () => void }) {
  const { store } = useWorkspace();
  switch (run.step) {
    case 'ask':
      return null;
    case 'busy':
      return <RunBar run={run.run} />;
    case 'stopped':
      return (
        <p class="note" role="status">
          Stopped. Nothing here was changed by {run.name}.
        </p>
      );
    case 'refused':
      return (
        <p class="note warning" role="alert">
          <strong>{run.name} was not taken.</strong> {run.message} Nothing here was changed.
        </p>
      );
    case 'choose':
      return <Choose {...run} onRestore={(mode) => restoreNow(store, run.name, run.backup, mode)} onLeave={onLeave} />;
    case 'done':
      return <Done {...run} onLeave={onLeave} />;
  }
}

interface ChooseProps extends Extract<RestoreRun, { step: 'choose' }> {
  readonly onRestore: (mode: 'merge' | 'replace') => void;
  readonly onLeave: () => void;
}

function Choose({ name, backup, preview, onRestore, onLeave }: ChooseProps) {
  const { setup } = useWorkspace();
  return (
    <div class="note stack" role="status">
      <BackupVerdict
        name={name}
        backup={backup}
        preview={preview}
        savedAt={sayTime(backup.header.exportedAt, setup.store.zone)}
      />
      <ChangesNote changes={preview.changes} as="would" />
      <div class="row">
        <button type="button" class="main" disabled={preview.conflict !== null} onClick={() => onRestore('merge')}>
          {isWrong(backup) ? 'Add what is new anyway' : 'Add what is new'}
        </button>
        {preview.onlyHere > 0 && (
          <button type="button" onClick={() => onRestore('replace')}>
            Replace everything: throw away {countWords(preview.onlyHere, 'entry', 'entries')} that only this browser has
          </button>
        )}
        <button type="button" class="plain" onClick={onLeave}>
          Change nothing
        </button>
      </div>
    </div>
  );
}

function Done({ restored, name, onLeave }: Extract<RestoreRun, { step: 'done' }> & { onLeave: () => void }) {
  const { added, same, files, removed, changes } = restored;
  return (
    <div class="note stack" role="status">
      <p>
        <strong>{name} is restored.</strong> {countWords(added, 'entry', 'entries')} restored,{' '}
        {same.toLocaleString('en-US')} were already here
        {files > 0 && `, with ${countWords(files, 'attached file', 'attached files')}`}
        {removed > 0 && `; ${countWords(removed, 'entry', 'entries')} that only this browser had were deleted`}.
      </p>
      {/* What only this browser had is gone, so nothing of it clashes any more. */}
      <ChangesNote changes={removed > 0 ? { ...changes, clashes: [] } : changes} as="did" />
      <div class="row">
        <button type="button" onClick={onLeave}>
          Done
        </button>
      </div>
    </div>
  );
}
