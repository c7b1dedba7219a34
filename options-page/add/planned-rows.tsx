import { useState } from 'preact/hooks';
import { sayClose } from '../../src/domain/close/say-close.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { PlannedRow, RowAction } from '../../src/intake/import-plan.ts';
import { ScrollX } from '../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';

interface PlannedRowsProps {
  readonly rows: readonly PlannedRow[];
  readonly onChoose: (row: number, action: RowAction) => void;
}

const PAGE = 50;
const ACTION_WORDS: Record<RowAction, string> = { add: 'add', update: 'update', skip: 'leave out' };

/** The rows as they were understood, the ones to look at first if asked for, a page at a time. */
export function PlannedRows({ rows, onChoose }: PlannedRowsProps) {
  const [onlyFaults, setOnlyFaults] = useState(false);
  const [shown, setShown] = useState(PAGE);
  const wanted = onlyFaults ? rows.filter(({ reading }) => reading.faults.length > 0) : rows;
  return (
    <section class="stack">
      <div class="row apart">
        <h2>The rows</h2>
        <label class="row">
          <input
            type="checkbox"
            checked={onlyFaults}
            onChange={(event) => {
              setOnlyFaults(event.currentTarget.checked);
              setShown(PAGE);
            }}
          />
          Only rows to check
        </label>
      </div>
      <ScrollX label="The rows">
        <table class="ledger">
          <thead>
            <tr>
              <th scope="col" class="number">
                Row
              </th>
              <th scope="col">Car</th>
              <th scope="col">Closes</th>
              <th scope="col" class="number">
                Price now
              </th>
              <th scope="col" class="number">
                Retail
              </th>
              <th scope="col">Check</th>
              <th scope="col">What to do</th>
            </tr>
          </thead>
          <tbody>
            {wanted.slice(0, shown).map((row) => (
              <Row key={row.reading.row} row={row} onChoose={onChoose} />
            ))}
          </tbody>
        </table>
      </ScrollX>
      {wanted.length > shown && (
        <button type="button" onClick={() => setShown(shown + PAGE)}>
          Show {Math.min(PAGE, wanted.length - shown)} more of {(wanted.length - shown).toLocaleString('en-US')}
        </button>
      )}
      {wanted.length === 0 && <p class="quiet">None.</p>}
    </section>
  );
}

function Row({ row, onChoose }: { row: PlannedRow; onChoose: PlannedRowsProps['onChoose'] }) {
  const { setup } = useWorkspace();
  const { reading, seen, action } = row;
  const { facts } = reading;
  const choices: RowAction[] =
    seen?.kind === 'watched' || seen?.kind === 'in-file' ? ['update', 'add', 'skip'] : ['add', 'skip'];
  return (
    <tr>
      <td class="number">{reading.row}</td>
      <td>
        {reading.usable ? lotTitle(facts) : <span class="missing">{reading.totals ? 'totals' : 'no lot'}</span>}
        {facts.vin !== undefined && <div class="small quiet">{facts.vin}</div>}
        {seen !== null && <div class="small">{SEEN_WORDS[seen.kind]}</div>}
      </td>
      <td>
        {facts.close === undefined ? (
          <span class="missing">no close</span>
        ) : (
          sayClose(facts.close, setup.store.zone, instant(Date.now()))
        )}
      </td>
      <td class="number">{facts.priceNow !== undefined && formatMoney(facts.priceNow)}</td>
      <td class="number">{facts.retail !== undefined && formatMoney(facts.retail.likely)}</td>
      <td>
        {reading.faults.map((fault) => (
          <p key={`${fault.column} ${fault.message}`} class="small">
            <strong>{fault.heading || 'The row'}</strong>
            {fault.text !== '' && ` “${fault.text}”`}: {fault.message}
          </p>
        ))}
      </td>
      <td>
        {reading.usable ? (
          <select
            aria-label={`What to do with row ${reading.row}`}
            value={action}
            onChange={(event) => {
              const chosen = choices.find((choice) => choice === event.currentTarget.value);
              if (chosen !== undefined) onChoose(reading.row, chosen);
            }}
          >
            {choices.map((choice) => (
              <option key={choice} value={choice}>
                {ACTION_WORDS[choice]}
              </option>
            ))}
          </select>
        ) : (
          <span class="quiet">{reading.totals ? 'left out' : 'can’t be added'}</span>
        )}
      </td>
    </tr>
  );
}

const SEEN_WORDS = {
  watched: 'Already on your list.',
  'in-file': 'Same lot as an earlier row.',
  'in-file-again': 'Same VIN as an earlier row, in another sale.',
  'another-sale': 'You watched this car in another sale.',
} as const;
