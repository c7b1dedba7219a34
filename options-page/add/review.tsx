import { useMemo, useState } from 'preact/hooks';
import type { DateOrder } from '../../src/domain/close/date-order.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { countPlan, type PlannedRow, type RowAction } from '../../src/intake/import-plan.ts';
import { importQuestions, NOTHING_MEANT } from '../../src/intake/import-questions.ts';
import type { Table } from '../../src/intake/open-table.ts';
import type { ColumnChoice } from '../../src/intake/rows/read-row.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { ColumnChoices } from './column-choices.tsx';
import { DateOrderChoice } from './date-order-choice.tsx';
import { startImport } from './import-run.ts';
import { NameQuestions } from './name-questions.tsx';
import { PlannedRows } from './planned-rows.tsx';
import { usePlan } from './use-plan.ts';

interface ReviewProps {
  readonly table: Table;
  readonly name: string;
  readonly from: 'file' | 'pasted';
  readonly onBack: () => void;
}

/** Everything that was read, with its faults, before any of it is kept. */
export function Review({ table, name, from, onBack }: ReviewProps) {
  const { setup, store, say } = useWorkspace();
  const [columns, setColumns] = useState<readonly ColumnChoice[]>(() =>
    guessColumns(table.headings, table.sample, { venues: setup.venues, titles: setup.titles }),
  );
  const [order, setOrder] = useState<DateOrder>();
  const [meant, setMeant] = useState(NOTHING_MEANT);
  const planning = usePlan(table, columns, from, { order, meant });
  const [chosen, setChosen] = useState<ReadonlyMap<number, RowAction>>(new Map());
  const plan = planning.state === 'ready' ? planning.plan : null;
  const rows = useMemo<readonly PlannedRow[]>(
    () => plan?.rows.map((row) => ({ ...row, action: chosen.get(row.reading.row) ?? row.action })) ?? [],
    [plan, chosen],
  );
  const counts = useMemo(() => countPlan(rows, instant(Date.now())), [rows]);
  const questions = useMemo(() => importQuestions(rows, setup), [rows, setup]);
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
          <NameQuestions questions={questions} meant={meant} onMeant={setMeant} />
          <div class="panel stack">
            <ul class="plain-list">
              <li>{countWords(counts.rows, 'row was', 'rows were')} read.</li>
              {counts.update > 0 && (
                <li>{countWords(counts.update, 'is', 'are')} already on your list and will be updated.</li>
              )}
              {counts.skip > 0 && <li>{countWords(counts.skip, 'says', 'say')} nothing new and will be left out.</li>}
              {counts.totals > 0 && (
                <li>
                  {countWords(counts.totals, 'row of totals is', 'rows of totals are')} no lot and left out (row{' '}
                  {rowsOf(rows, ({ reading }) => reading.totals === true)}).
                </li>
              )}
              {counts.repeated > 0 && (
                <li>
                  {countWords(counts.repeated, 'row is', 'rows are')} the same lot as an earlier row of this file (row{' '}
                  {rowsOf(rows, ({ seen }) => seen?.kind === 'in-file')}): what it says otherwise goes into that lot.
                </li>
              )}
              {counts.again > 0 && (
                <li class="row">
                  {countWords(counts.again, 'row has', 'rows have')} the VIN of an earlier row, in another sale (row{' '}
                  {rowsOf(rows, isAgain)}).
                  <ChoiceInput
                    label="Cars that are twice in this file"
                    value={rows.some((row) => isAgain(row) && row.action === 'add') ? 'add' : 'skip'}
                    choices={TWICE}
                    onCommit={(action) =>
                      setChosen(
                        new Map([
                          ...chosen,
                          ...rows.filter(isAgain).map(({ reading }) => [reading.row, asAction(action)] as const),
                        ]),
                      )
                    }
                  />
                </li>
              )}
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
                onClick={() =>
                  startImport(store, { name, rows, from }).then((sentence) => {
                    // Where the screen is shown it says so itself.
                    if (!location.hash.startsWith('#/add')) say(sentence);
                  })
                }
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

const isAgain = ({ seen }: PlannedRow) => seen?.kind === 'in-file-again';
const TWICE = [
  { value: 'add', label: 'Add each as a lot' },
  { value: 'skip', label: 'Leave the later ones out' },
];
const asAction = (value: string | undefined): RowAction => (value === 'skip' ? 'skip' : 'add');

/** "3, 17 and 4 more": where in the file to look. */
function rowsOf(rows: readonly PlannedRow[], is: (row: PlannedRow) => boolean): string {
  const numbers = rows.filter(is).map(({ reading }) => reading.row);
  const shown = numbers.slice(0, 5).map(String).join(', ');
  return numbers.length > 5 ? `${shown} and ${(numbers.length - 5).toLocaleString('en-US')} more` : shown;
}

function keepWords(add: number, update: number): string {
  if (add + update === 0) return 'Nothing to save';
  const parts = [
    add > 0 && `Add ${countWords(add, 'lot', 'lots')}`,
    update > 0 && `${add > 0 ? 'update' : 'Update'} ${countWords(update, 'lot', 'lots')}`,
  ];
  return parts.filter(Boolean).join(', ');
}
