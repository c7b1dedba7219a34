import { useState } from 'preact/hooks';
import type { MatchedSale } from '../../../src/domain/books/sold/match-sold.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { ReadSold } from '../../../src/intake/sold/read-sold.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { folderName } from '../../../src/views/books/folder-name.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';

interface ReviewProps {
  readonly file: string;
  readonly sales: readonly MatchedSale[];
  readonly faults: ReadSold['faults'];
  readonly onDone: () => void;
}

const STATES: Readonly<Record<MatchedSale['state'], string>> = {
  new: 'Ready',
  differs: 'Recorded otherwise',
  look: 'Check',
  same: 'Recorded already',
  none: 'No car found',
};

/** Every row with the folder it belongs to. Only ticked rows are recorded; what fits no car is named and stays in the file. */
export function SoldReview({ file, sales, faults, onDone }: ReviewProps) {
  const { store, say } = useWorkspace();
  const [ticked, setTicked] = useState<ReadonlySet<number>>(
    () => new Set(sales.filter(({ state }) => state === 'new').map(({ row }) => row)),
  );
  const [left, setLeft] = useState<string>();
  const chosen = sales.filter(({ row, folder }) => folder !== null && ticked.has(row));
  const unmatched = sales.filter(({ state }) => state === 'none').length;

  const record = async () => {
    const booked = await store.book(
      ...chosen.flatMap(({ folder, date, price, buyer }) =>
        folder === null ? [] : [{ kind: 'outcome-booked' as const, lot: folder.lot, date, priceCents: price, buyer }],
      ),
    );
    if (!booked.ok) return say(booked.message);
    say(`${countWords(chosen.length, 'sale', 'sales')} recorded.`, ...booked.value.map(({ id }) => id));
    if (unmatched + faults.length === 0) return onDone();
    setTicked(new Set());
    setLeft(`${countWords(unmatched + faults.length, 'row was', 'rows were')} not recorded; they are listed below.`);
  };

  return (
    <section class="panel stack">
      <p class="row">
        <strong>{file}</strong>
        <button type="button" class="plain no-print" onClick={onDone}>
          Another list
        </button>
      </p>
      <p role="status">
        {left ??
          `${countWords(sales.length + faults.length, 'row', 'rows')}: ${countWords(sales.length - unmatched, 'car', 'cars')} found, ${unmatched} without a car, ${faults.length} not readable.`}
      </p>
      {faults.length > 0 && (
        <div class="note warning">
          <p>Rows that can’t be read:</p>
          <ul class="plain-list">
            {faults.map(({ row, message }) => (
              <li key={`${row}-${message}`}>
                Row {row}: {message}
              </li>
            ))}
          </ul>
        </div>
      )}
      <ScrollX label="Sold cars and their folders">
        <Ledger
          rows={sales}
          rowKey={({ row }) => row}
          columns={[
            { label: 'Record', cell: (sale) => <Tick sale={sale} ticked={ticked} onTick={setTicked} /> },
            { label: 'Row', number: true, cell: ({ row }) => row },
            {
              label: 'Car',
              heads: true,
              cell: ({ folder, vin }) => (folder === null ? vin : folderName(folder.facts)),
            },
            { label: 'Sold', class: 'day', cell: ({ date }) => dateInWords(date) },
            { label: 'For', number: true, cell: ({ price }) => formatMoney(price) },
            {
              label: 'To',
              cell: ({ buyer }) =>
                buyer === 'retail' ? 'a customer' : buyer === 'business' ? 'a business' : 'wholesale',
            },
            {
              label: 'Result',
              cell: ({ state, why }) => (
                <>
                  <span class={state === 'new' || state === 'same' ? 'tag' : 'tag doubt'}>{STATES[state]}</span> {why}
                </>
              ),
            },
          ]}
        />
      </ScrollX>
      <div class="row no-print">
        <button type="button" class="main" disabled={chosen.length === 0} onClick={record}>
          Record {countWords(chosen.length, 'sale', 'sales')}
        </button>
      </div>
    </section>
  );
}

interface TickProps {
  readonly sale: MatchedSale;
  readonly ticked: ReadonlySet<number>;
  readonly onTick: (ticked: ReadonlySet<number>) => void;
}

function Tick({ sale: { row, folder, state }, ticked, onTick }: TickProps) {
  if (folder === null || state === 'same') return null;
  return (
    <input
      type="checkbox"
      aria-label={`Record row ${row}`}
      checked={ticked.has(row)}
      onChange={(event) => {
        const next = new Set(ticked);
        if (event.currentTarget.checked) next.add(row);
        else next.delete(row);
        onTick(next);
      }}
    />
  );
}
