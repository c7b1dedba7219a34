import type { BankLine } from '../../../src/domain/books/bank/bank-line.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { dateInWords } from '../../../src/views/words/date-words.ts';

const MOST_ROWS = 20;
/** So many are in sight without unfolding. */
export const FEW_LINES = 10;

/** The lines as they were read, the first of them. */
export function Lines({ lines }: { readonly lines: readonly BankLine[] }) {
  return (
    <>
      <Ledger
        class="fits-narrow"
        rows={lines.slice(0, MOST_ROWS)}
        rowKey={({ key }) => key}
        columns={[
          { label: 'Day', class: 'day', cell: ({ date }) => dateInWords(date) },
          { label: 'What the bank says', heads: true, cell: ({ text }) => text },
          { label: 'Amount', number: true, cell: ({ cents }) => formatMoney(cents, { cents: 'always' }) },
        ]}
      />
      {lines.length > MOST_ROWS && <p class="small">and {(lines.length - MOST_ROWS).toLocaleString('en-US')} more</p>}
    </>
  );
}

/** Rows of the file that are no lines, with what is said of each. */
export function Rows({ rows }: { readonly rows: readonly { readonly row: number; readonly message: string }[] }) {
  return (
    <ul class="plain-list small">
      {rows.slice(0, MOST_ROWS).map(({ row, message }) => (
        <li key={row}>
          Row {row}: {message}
        </li>
      ))}
      {rows.length > MOST_ROWS && <li>and {rows.length - MOST_ROWS} more</li>}
    </ul>
  );
}
