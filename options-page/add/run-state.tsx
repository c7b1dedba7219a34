import { useEffect } from 'preact/hooks';
import { RunBar } from '../../src/ui/long-run.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { type ImportRun, importRun, undoImport } from './import-run.ts';

interface RunStateProps {
  readonly run: Exclude<ImportRun, { state: 'idle' }>;
  readonly onBack: () => void;
}

/** How far the import is, and then what came of it. */
export function RunState({ run, onBack }: RunStateProps) {
  return (
    <section class="panel stack">
      {run.state === 'running' ? <RunBar run={run.run} /> : <Done run={run} onBack={onBack} />}
    </section>
  );
}

function Done({ run, onBack }: { run: Extract<ImportRun, { state: 'done' }>; onBack: () => void }) {
  const { store, say } = useWorkspace();
  // It has been seen; the next time the screen begins anew.
  useEffect(() => () => importRun.set({ state: 'idle' }), []);
  return (
    <>
      <h2>{run.undone ? 'Undone' : run.fault ? 'It stopped partway' : run.stopped ? 'Stopped' : 'Saved'}</h2>
      {run.fault && (
        <p class="note warning" role="alert">
          {run.fault}
        </p>
      )}
      <p role="status">
        {run.undone
          ? 'Everything that was added has been undone. If you saved its closings to a calendar, they still ring there: save the calendar file again on the Week screen and open it, and the calendar cancels them.'
          : `${countWords(run.written, 'lot is', 'lots are')} on the list.`}
      </p>
      <div class="row">
        <a class="button main" href="#/lots">
          To the lots
        </a>
        {!run.undone && run.written > 0 && (
          <button
            type="button"
            onClick={() =>
              undoImport(store).then(
                (fault) => fault !== null && say(fault),
                (error) => say(String(error)),
              )
            }
          >
            Undo all of it
          </button>
        )}
        <button type="button" class="plain" onClick={onBack}>
          Add more
        </button>
      </div>
    </>
  );
}
