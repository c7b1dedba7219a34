import { useState } from 'preact/hooks';
import { COST_KINDS, type CostKind } from '../../../src/domain/accounts/cost-kind.ts';
import { answeredBy } from '../../../src/domain/books/folder/compare-lines.ts';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { COST_WORDS } from '../../../src/views/books/cost-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

/** A bill for this car, typed in. */
export function BillForm({ folder }: { folder: PurchaseFolder }) {
  const { today } = useBooks();
  const book = useBook();
  const [cost, setCost] = useState<CostKind>('recon');
  const [label, setLabel] = useState<string>();
  const [amount, setAmount] = useState<Cents>();
  const [date, setDate] = useState<LocalDate>();
  const [payee, setPayee] = useState<string>();
  const [number, setNumber] = useState<string>();
  const [owed, setOwed] = useState(false);
  const [due, setDue] = useState<LocalDate>();
  const [credit, setCredit] = useState(false);
  const ready = amount !== undefined && amount !== 0;

  const keep = async () => {
    if (!ready) return;
    const words = label ?? COST_WORDS[cost];
    const against = answeredBy({ cost, label: words }, folder.expected?.lines ?? []);
    const signed = credit ? cents(-amount) : amount;
    const kept = await book(
      {
        kind: 'costs-booked',
        date: date ?? today,
        paid: owed ? 'owed' : 'bank',
        ...(payee && { payee }),
        ...(number && { document: { number } }),
        ...(owed && due !== undefined && { due }),
        lines: [{ lot: folder.lot, cost, label: words, cents: signed, ...(against && { against }) }],
      },
      `${words}: ${formatMoney(signed)} recorded.`,
    );
    if (kept) {
      setLabel(undefined);
      setAmount(undefined);
      setNumber(undefined);
      setDue(undefined);
      setCredit(false);
    }
  };
  return (
    <details class="panel">
      <summary>Bill</summary>
      <div class="stack">
        <div class="fields">
          <ChoiceInput
            label="For"
            value={cost}
            choices={COST_KINDS.map((kind) => ({ value: kind, label: COST_WORDS[kind] }))}
            onCommit={(value) => setCost(COST_KINDS.find((kind) => kind === value) ?? 'other')}
          />
          <TextInput label="Description" value={label} longest={120} placeholder="Tires" onCommit={setLabel} />
          <MoneyInput label="Amount" value={amount} onCommit={setAmount} />
          <DateInput label="Bill date" value={date ?? today} onCommit={setDate} />
          <TextInput label="Vendor" value={payee} longest={120} onCommit={setPayee} />
          <TextInput label="Bill no." value={number} longest={120} onCommit={setNumber} />
        </div>
        <CheckInput label="Not paid yet" value={owed} onCommit={setOwed} />
        {owed && <DateInput label="Due on" value={due} hint="Blank: by the vendor’s terms" onCommit={setDue} />}
        <CheckInput label="This is a credit" value={credit} onCommit={setCredit} />
        <div class="row">
          <button type="button" class="main" disabled={!ready} onClick={keep}>
            Record the bill
          </button>
          <a href="#/books/share">One bill for several cars</a>
        </div>
      </div>
    </details>
  );
}
