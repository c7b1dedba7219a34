import { lastDayOf, type Month, monthInWords, monthOf } from '../../../src/domain/books/month.ts';
import { beancountJournal } from '../../../src/domain/books/out/beancount-journal.ts';
import { plainTextJournal } from '../../../src/domain/books/out/plain-text-journal.ts';
import { inMonth } from '../../../src/domain/books/post/post-months.ts';
import {
  FOLDER_COLUMNS,
  LINE_COLUMNS,
  type OutColumn,
  PAYABLE_COLUMNS,
  POSTING_COLUMNS,
  zoneColumn,
} from '../../../src/intake/books/books-columns.ts';
import { booksToCsv } from '../../../src/intake/books/books-to-csv.ts';
import { saveFile } from '../../../src/ui/save-file.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { clearedIn } from '../../../src/views/books/bank-of.ts';
import { payablesOf } from '../../../src/views/books/payables-of.ts';
import { useBooks } from '../use-books.ts';

const FILES = [
  { name: 'Cars', columns: FOLDER_COLUMNS as readonly OutColumn<never>[] },
  { name: 'Lines', columns: LINE_COLUMNS as readonly OutColumn<never>[] },
  { name: 'Open bills', columns: PAYABLE_COLUMNS as readonly OutColumn<never>[] },
  { name: 'Postings', columns: POSTING_COLUMNS as readonly OutColumn<never>[] },
];

/** The month as files: tables for a spreadsheet, and a plain-text journal for a double-entry program. */
export function ExportPart({ month }: { month: Month }) {
  const { setup, say } = useWorkspace();
  const { state, folders, posted, bookkeeping, lots } = useBooks();
  const own = folders.filter(({ won }) => won !== null && monthOf(won.date) === month);
  const facts = new Map(lots.map((lot) => [lot.id, lot.facts]));
  const head = {
    title: `${setup.store.name || 'Purchases'}: ${monthInWords(month)}`,
    zone: setup.store.zone,
    ...(state.bank.statements.length > 0 && { cleared: clearedIn(state.bank, folders) }),
  };
  const save = (text: string, name: string, type: string) =>
    saveFile(new Blob([text], { type: `${type};charset=utf-8` }), `headroom-${month}-${name}`);
  const csv = <Row,>(columns: readonly OutColumn<Row>[], rows: readonly Row[], name: string) =>
    save(booksToCsv([...columns, zoneColumn(setup.store.zone)], rows), `${name}.csv`, 'text/csv');
  const transactions = inMonth(posted, month);
  const upTo = posted.transactions.filter(({ date }) => monthOf(date) <= month);
  return (
    <section class="panel stack no-print" aria-labelledby="month-out">
      <h2 id="month-out">Export</h2>
      <div class="row">
        <button type="button" onClick={() => csv(FOLDER_COLUMNS, own, 'cars')}>
          Cars won, as CSV
        </button>
        <button
          type="button"
          onClick={() =>
            csv(
              LINE_COLUMNS,
              own.flatMap((folder) => folder.lines.map((line) => ({ folder, line }))),
              'lines',
            )
          }
        >
          Their lines, as CSV
        </button>
        <button
          type="button"
          onClick={() =>
            csv(
              POSTING_COLUMNS,
              transactions.flatMap((transaction) =>
                transaction.postings.map((posting) => ({
                  transaction,
                  posting,
                  facts: facts.get(transaction.lot),
                  accounts: bookkeeping.accounts,
                })),
              ),
              'postings',
            )
          }
        >
          Postings, as CSV
        </button>
        <button
          type="button"
          onClick={() => {
            const { inOrder, nameOf } = payablesOf(folders, setup, lastDayOf(month));
            const rows = inOrder.map((bill) => ({ bill, vendor: nameOf(bill.vendor) }));
            csv(PAYABLE_COLUMNS, rows, 'open-bills');
          }}
        >
          Open bills at its end, as CSV
        </button>
        <button type="button" onClick={() => print()}>
          Print
        </button>
      </div>
      <div class="row">
        <button
          type="button"
          onClick={() =>
            save([...plainTextJournal(upTo, bookkeeping.accounts, facts, head)].join(''), 'books.journal', 'text/plain')
          }
        >
          Journal for ledger and hledger
        </button>
        <button
          type="button"
          onClick={() => {
            const text = beancountJournal(upTo, bookkeeping.accounts, facts, head);
            if (text.ok) save(text.value, 'books.beancount', 'text/plain');
            else say(text.message);
          }}
        >
          Journal for beancount
        </button>
      </div>
      <p class="quiet small prose">
        The journals hold everything through {monthInWords(month)}, so their balances match the ones above. Dates are in{' '}
        {setup.store.zone}. Text that a spreadsheet would run or change starts with an apostrophe.
      </p>
      <details>
        <summary>What the columns mean</summary>
        <div class="books-forms">
          {FILES.map(({ name, columns }) => (
            <div key={name} class="stack">
              <h3>{name}</h3>
              <dl class="small">
                {[...columns, zoneColumn(setup.store.zone)].map(({ heading, means }) => (
                  <div key={heading}>
                    <dt class="strong">{heading}</dt>
                    <dd>{means}</dd>
                  </div>
                ))}
              </dl>
            </div>
          ))}
        </div>
      </details>
    </section>
  );
}
