import { useState } from 'preact/hooks';
import { cents, sumCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import type { BankView } from '../../../src/views/books/bank-of.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBook } from '../use-book.ts';
import { MoveCell } from './move-cell.tsx';
import { RecordLine } from './record-line.tsx';

const MOST_ROWS = 200;

/** What either side has alone: to be matched by hand, recorded, or left out with a reason. */
export function BankOpen({ view }: { readonly view: BankView }) {
  const book = useBook();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [why, setWhy] = useState('Not for a car');
  const toggle = (key: string, on: boolean) =>
    setChosen((before) => new Set(on ? [...before, key] : [...before].filter((each) => each !== key)));
  const lines = view.lines.filter(({ key }) => chosen.has(key));
  const moves = view.moves.filter(({ key }) => chosen.has(`m ${key}`));
  const total = (some: readonly { readonly cents: (typeof lines)[number]['cents'] }[]) =>
    sumCents(some.map((one) => one.cents));
  const difference = cents(total(lines) - total(moves));
  const [first] = lines;
  const done = () => setChosen(new Set());
  const matchThem = async () => {
    const matches = [{ lines: lines.map(({ key }) => key), booked: moves.flatMap(({ keys }) => keys) }];
    if (await book({ kind: 'bank-matched', matches }, 'Matched.')) done();
  };
  const leaveOut = async () => {
    const said = `${countWords(lines.length, 'line', 'lines')} left out.`;
    if (await book({ kind: 'bank-left-out', lines: lines.map(({ key }) => key), why }, said)) done();
  };
  const box = (key: string, label: string) => (
    <input
      type="checkbox"
      aria-label={`Choose ${label}`}
      checked={chosen.has(key)}
      onChange={(event) => toggle(key, event.currentTarget.checked)}
    />
  );
  return (
    <>
      <section class="stack" aria-labelledby="bank-only">
        <h2 id="bank-only">In the bank, not in the books: {view.lines.length.toLocaleString('en-US')}</h2>
        {view.lines.length > 0 && (
          <ScrollX label="In the bank, not in the books">
            <Ledger
              class="fits-narrow"
              rows={view.lines.slice(0, MOST_ROWS)}
              rowKey={({ key }) => key}
              columns={[
                { label: 'Choose', quietHead: true, class: 'no-print', cell: ({ key, text }) => box(key, text) },
                { label: 'Day', class: 'day wide-only', cell: ({ date }) => dateInWords(date) },
                {
                  label: 'What the bank says',
                  heads: true,
                  cell: ({ text, date, check }) => (
                    <>
                      {text}
                      <span class="small quiet block narrow-only">
                        {[dateInWords(date), check !== undefined && `check ${check}`].filter(Boolean).join(', ')}
                      </span>
                    </>
                  ),
                },
                { label: 'Check', class: 'wide-only', cell: ({ check }) => check ?? '' },
                {
                  label: 'Amount',
                  number: true,
                  cell: (one) => formatMoney(one.cents, { cents: 'always' }),
                  total: formatMoney(total(view.lines), { cents: 'always' }),
                },
              ]}
            />
          </ScrollX>
        )}
        <Rest of={view.lines.length} />
      </section>
      <section class="stack" aria-labelledby="books-only">
        <h2 id="books-only">In the books, not at the bank: {view.moves.length.toLocaleString('en-US')}</h2>
        {view.later.length > 0 && (
          <p class="quiet">
            {countWords(view.later.length, 'recorded amount is', 'recorded amounts are')} dated after the last
            statement.
          </p>
        )}
        {view.earlier > 0 && (
          <p class="quiet">
            {countWords(view.earlier, 'recorded amount is', 'recorded amounts are')} from before the first statement.
          </p>
        )}
        {view.moves.length > 0 && (
          <ScrollX label="In the books, not at the bank">
            <Ledger
              class="fits-narrow"
              rows={view.moves.slice(0, MOST_ROWS)}
              rowKey={({ key }) => key}
              columns={[
                {
                  label: 'Choose',
                  quietHead: true,
                  class: 'no-print',
                  cell: ({ key, payee = '', date }) => box(`m ${key}`, `${payee} ${dateInWords(date)}`),
                },
                {
                  label: 'Recorded',
                  heads: true,
                  cell: (move) => <MoveCell move={move} cars={view.carsOf(move.key)} />,
                },
                {
                  label: 'Amount',
                  number: true,
                  cell: (one) => formatMoney(one.cents, { cents: 'always' }),
                  total: formatMoney(total(view.moves), { cents: 'always' }),
                },
              ]}
            />
          </ScrollX>
        )}
        <Rest of={view.moves.length} />
      </section>
      {lines.length > 0 && (
        <section class="panel stack book-invoice no-print" aria-label="What to do with the chosen lines">
          <p>
            Chosen: {countWords(lines.length, 'bank line', 'bank lines')}, {formatMoney(total(lines))}, and{' '}
            {countWords(moves.length, 'recorded amount', 'recorded amounts')}, {formatMoney(total(moves))}.
          </p>
          <div class="row">
            <button type="button" class="main" disabled={moves.length === 0} onClick={matchThem}>
              {moves.length > 0 && difference !== 0
                ? `Match, though ${formatMoney(difference, { sign: 'always' })} apart`
                : 'Match them'}
            </button>
            <TextInput
              label="Reason to leave out"
              value={why}
              longest={200}
              required
              onCommit={(reason = why) => setWhy(reason)}
            />
            <button type="button" onClick={leaveOut}>
              Leave out
            </button>
          </div>
          {lines.length === 1 && moves.length === 0 && first !== undefined && (
            <RecordLine key={first.key} line={first} onDone={done} />
          )}
        </section>
      )}
    </>
  );
}

const Rest = ({ of }: { readonly of: number }) =>
  of > MOST_ROWS ? <p class="quiet">The first {MOST_ROWS} are shown. Settle these and the next ones follow.</p> : null;
