import { useMemo, useState } from 'preact/hooks';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { BANK_ROLES, type BankRole } from '../../../src/intake/bank/bank-roles.ts';
import type { DayOrder } from '../../../src/intake/bank/day-order.ts';
import type { OpenedStatement } from '../../../src/intake/bank/open-statement.ts';
import { readBankTable } from '../../../src/intake/bank/read-bank-table.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { ColumnTable } from '../../../src/ui/tables/column-table.tsx';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';
import { FEW_LINES, Lines, Rows } from './statement-lines.tsx';

interface StatementReviewProps {
  readonly opened: OpenedStatement;
  readonly file: string;
  readonly onDone: () => void;
}

const ROLE_WORDS: Readonly<Record<BankRole, string>> = {
  date: 'Day',
  text: 'Description',
  amount: 'Amount with its sign',
  out: 'Money out',
  in: 'Money in',
  kind: 'Debit or credit',
  balance: 'Balance after it',
  check: 'Check number',
  id: 'The bank’s id',
};
const ROLES = BANK_ROLES.map((role) => ({ role, label: ROLE_WORDS[role] }));
const ORDERS = [
  { value: 'month-first', label: 'month first: 11/28' },
  { value: 'day-first', label: 'day first: 28/11' },
];
const PLAIN = [
  { value: 'in', label: 'money in' },
  { value: 'out', label: 'money out' },
];

/** What a statement says before it is kept: what is asked, its balances, and what can't be read. */
export function StatementReview({ opened, file, onDone }: StatementReviewProps) {
  const { state, today } = useBooks();
  const book = useBook();
  const last = state.bank.statements.at(-1);
  const [account, setAccount] = useState(last?.account ?? 'Bank account');
  const [at, setAt] = useState('0');
  const [roles, setRoles] = useState(opened.as === 'table' ? opened.table.roles : []);
  const [order, setOrder] = useState<DayOrder>();
  const [plain, setPlain] = useState<'in' | 'out'>();
  const [opening, setOpening] = useState<Cents>();
  const [closing, setClosing] = useState<Cents>();
  const table = useMemo(
    () =>
      opened.as === 'table'
        ? readBankTable(opened.table, { account, roles, order, plain, opening, closing }, today)
        : { doubts: [], read: opened.statements[Number(at)] },
    [opened, account, roles, order, plain, opening, closing, today, at],
  );
  const { doubts, read } = table;
  const fresh = read?.lines.filter(({ key }) => !state.bank.lines.has(key)) ?? [];
  const asksOrder = opened.as === 'table' && (doubts.includes('day-order') || order !== undefined);
  const asksPlain = opened.as === 'table' && (doubts.includes('direction') || plain !== undefined);
  const keep = async () => {
    const [first] = read?.lines ?? [];
    if (read === undefined || first === undefined) return;
    const kept = await book(
      {
        kind: 'bank-read',
        account: read.account || account,
        file: file.slice(0, 260),
        from: read.from ?? first.date,
        to: read.to ?? read.lines.at(-1)?.date ?? first.date,
        ...(read.opening !== undefined && { opening: read.opening }),
        ...(read.closing !== undefined && { closing: read.closing }),
        lines: [...read.lines],
        ...(read.dropped.length > 0 && { dropped: [...read.dropped] }),
      },
      `${countWords(fresh.length, 'line', 'lines')} read from ${file}.`,
    );
    if (kept) onDone();
  };
  return (
    <section class="panel stack no-print" aria-labelledby="bank-file">
      <h2 id="bank-file">{file}</h2>
      <div class="fields">
        {opened.as === 'table' && (
          <TextInput
            label="Account"
            value={account}
            longest={40}
            required
            hint="Its name here, the same for all its statements"
            onCommit={(name) => setAccount(name ?? 'Bank account')}
          />
        )}
        {opened.as === 'ofx' && opened.statements.length > 1 && (
          <ChoiceInput
            label="Account"
            value={at}
            choices={opened.statements.map((one, i) => ({
              value: String(i),
              label: one.account || `Account ${i + 1}`,
            }))}
            onCommit={(value = '0') => setAt(value)}
          />
        )}
        {asksOrder && (
          <ChoiceInput
            label="Its days are written"
            value={order}
            none="choose"
            choices={ORDERS}
            onCommit={(value) => setOrder(value as DayOrder | undefined)}
          />
        )}
        {asksPlain && (
          <ChoiceInput
            label="Amounts without a sign are"
            value={plain}
            none="choose"
            choices={PLAIN}
            onCommit={(value) => setPlain(value as 'in' | 'out' | undefined)}
          />
        )}
        {opened.as === 'table' && (
          <>
            <MoneyInput label="Opening balance" value={opening ?? read?.opening} onCommit={setOpening} />
            <MoneyInput label="Closing balance" value={closing ?? read?.closing} onCommit={setClosing} />
          </>
        )}
      </div>
      {opened.as === 'table' && (
        <details open={doubts.includes('columns')}>
          <summary>What each column holds</summary>
          <ColumnTable
            columns={roles.map((role, column) => ({
              column,
              heading: opened.table.headings?.[column]?.trim() || `Column ${column + 1}`,
              role,
            }))}
            roles={ROLES}
            sample={opened.table.rows.map(({ cells }) => cells)}
            onChange={(column, role) => setRoles(roles.map((each, i) => (i === column ? role : each)))}
          />
        </details>
      )}
      {doubts.includes('columns') && (
        <p class="note warning">Choose which column holds the day, and which the amount or the money in and out.</p>
      )}
      {(doubts.includes('day-order') || doubts.includes('direction')) && (
        <p class="note warning">The file leaves this open, and a wrong guess would turn days or amounts around.</p>
      )}
      {read?.balance !== undefined && <p class={read.balance.ties ? '' : 'note warning'}>{read.balance.message}</p>}
      {read !== undefined && read.faults.length > 0 && (
        <div class="note warning">
          <p>{countWords(read.faults.length, 'row can’t', 'rows can’t')} be read and will not be there:</p>
          <Rows rows={read.faults} />
        </div>
      )}
      {read !== undefined && read.notes.length > 0 && (
        <details>
          <summary>{countWords(read.notes.length, 'row is', 'rows are')} no line of the account</summary>
          <Rows rows={read.notes} />
        </details>
      )}
      {fresh.length > 0 && (
        <details open={fresh.length <= FEW_LINES}>
          <summary>{countWords(fresh.length, 'line', 'lines')} of the account</summary>
          <Lines lines={fresh} />
        </details>
      )}
      {read !== undefined && fresh.length < read.lines.length && (
        <p>
          {countWords(read.lines.length - fresh.length, 'line was', 'lines were')} read before and will not be counted
          twice.
        </p>
      )}
      <div class="row">
        <button
          type="button"
          class="main"
          disabled={fresh.length === 0 && (read?.dropped.length ?? 0) === 0}
          onClick={keep}
        >
          Add {countWords(fresh.length, 'line', 'lines')}
        </button>
        <button type="button" class="plain" onClick={onDone}>
          Another statement
        </button>
      </div>
    </section>
  );
}
