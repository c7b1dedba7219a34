import { useMemo, useState } from 'preact/hooks';
import type { DateOrder } from '../../src/domain/close/date-order.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { countPlan, type PlannedRow, type RowAction } from '../../src/intake/import-plan.ts';
import type { Table } from '../../src/intake/open-table.ts';
import type { ColumnChoice } from '../../src/intake/rows/read-row.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { ColumnChoices } from './column-choices.tsx';
import { DateOrderChoice } from './date-order-choice.tsx';
import { PlannedRows } from './planned-rows.tsx';
import { type ImportRun, useImportRun } from './use-import-run.ts';
import { usePlan } from './use-plan.ts';

interface ReviewProps {
  readonly table: Table;
  readonly name: string;
  readonly from: 'file' | 'pasted';
  readonly onBack: () => void;
}

/** Everything that was read, with its faults, before any of it is kept. */
export function Review({ table, name, from, onBack }: ReviewProps) {
  const { setup } = useWorkspace();
  const [columns, setColumns] = useState<readonly ColumnChoice[]>(() =>
    guessColumns(table.headings, table.sample, { venues: setup.venues, titles: setup.titles }),
  );
  const [order, setOrder] = useState<DateOrder>();
  const planning = usePlan(table, columns, from, order);
  const [chosen, setChosen] = useState<ReadonlyMap<number, RowAction>>(new Map());
  const plan = planning.state === 'ready' ? planning.plan : null;
  const rows = useMemo<readonly PlannedRow[]>(
    () => plan?.rows.map((row) => ({ ...row, action: chosen.get(row.reading.row) ?? row.action })) ?? [],
    [plan, chosen],
  );
  const counts = useMemo(() => countPlan(rows, instant(Date.now())), [rows]);
  const { run, start, stop, undo } = useImportRun(from);

  if (run.state !== 'idle') return <RunState run={run} name={name} onStop={stop} onUndo={undo} onBack={onBack} />;
  return (
    <div class="stack loose">
      <div class="row apart">
        <p>
          <strong>{name}</strong>
          {table.headings === null && ' has no headings, so the columns were guessed from their cells.'}
        </p>
        <button type="button" onClick={onBack}>
          Choose something else
        </button>
      </div>
      <ColumnChoices table={table} columns={columns} onChange={setColumns} />
      {planning.state === 'ready' && <DateOrderChoice habits={planning.habits} order={order} onChoose={setOrder} />}
      {planning.state === 'reading' && (
        <p role="status">Reading… {planning.rows.toLocaleString('en-US')} rows so far</p>
      )}
      {planning.state === 'failed' && (
        <p class="note warning" role="alert">
          The rows could not be read: {planning.message} Nothing was saved.
        </p>
      )}
      {plan !== null && (
        <>
          <div class="panel stack">
            <ul class="plain-list">
              <li>{countWords(counts.rows, 'row was', 'rows were')} read.</li>
              {counts.update > 0 && (
                <li>{countWords(counts.update, 'is', 'are')} already on your list and will be updated.</li>
              )}
              {counts.skip > 0 && <li>{countWords(counts.skip, 'says', 'say')} nothing new and will be left out.</li>}
              {counts.unusable > 0 && (
                <li>{countWords(counts.unusable, 'does', 'do')} not say which lot it is and can’t be added.</li>
              )}
              {counts.withFaults > 0 && (
                <li>
                  {countWords(counts.withFaults, 'has', 'have')} a cell to check. The rest of each row is used, and what
                  could not be read goes into the lot’s notes. Where that cell is part of the max bid (retail, recon,
                  transport, increment, how it is paid), the lot has no max bid until you fix it.
                </li>
              )}
              {counts.closed > 0 && <li>{countWords(counts.closed, 'has', 'have')} closed already.</li>}
            </ul>
            <div class="row">
              <button
                type="button"
                class="main"
                disabled={counts.add + counts.update === 0}
                onClick={() => start(rows)}
              >
                {keepWords(counts.add, counts.update)}
              </button>
            </div>
          </div>
          <PlannedRows
            rows={rows}
            onChoose={(row, action) => setChosen((before) => new Map(before).set(row, action))}
          />
        </>
      )}
    </div>
  );
}

function keepWords(add: number, update: number): string {
  if (add + update === 0) return 'Nothing to save';
  const parts = [
    add > 0 && `Add ${countWords(add, 'lot', 'lots')}`,
    update > 0 && `${add > 0 ? 'update' : 'Update'} ${countWords(update, 'lot', 'lots')}`,
  ];
  return parts.filter(Boolean).join(', ');
}

interface RunStateProps {
  readonly run: Exclude<ImportRun, { state: 'idle' }>;
  readonly name: string;
  readonly onStop: () => void;
  readonly onUndo: () => void;
  readonly onBack: () => void;
}

function RunState({ run, name, onStop, onUndo, onBack }: RunStateProps) {
  if (run.state === 'running') {
    return (
      <section class="panel stack" aria-busy="true">
        <h2>Saving {name}</h2>
        <progress class="progress" value={run.written} max={run.total} aria-label="Lots saved so far" />
        <p role="status">
          {run.written.toLocaleString('en-US')} of {run.total.toLocaleString('en-US')}
        </p>
        <div class="row">
          <button type="button" onClick={onStop}>
            Stop
          </button>
        </div>
      </section>
    );
  }
  return (
    <section class="panel stack">
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
          <button type="button" onClick={onUndo}>
            Undo all of it
          </button>
        )}
        <button type="button" class="plain" onClick={onBack}>
          Add more
        </button>
      </div>
    </section>
  );
}
