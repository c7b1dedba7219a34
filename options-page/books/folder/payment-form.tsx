import { useState } from 'preact/hooks';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { owedTo } from '../../../src/views/books/owed-to.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

/** Money from the bank to whoever is owed, whole or in part, or back from him. */
export function PaymentForm({ folder }: { folder: PurchaseFolder }) {
  const { today } = useBooks();
  const book = useBook();
  const [amount, setAmount] = useState<Cents>();
  const [date, setDate] = useState<LocalDate>();
  const [number, setNumber] = useState<string>();
  const [back, setBack] = useState(false);
  const [chosen, setChosen] = useState<string>();
  const owed = owedTo(folder);
  const to = owed.find(({ payee }) => payee === chosen) ?? owed.find((each) => each.cents > 0) ?? owed[0];
  const due = to.cents > 0 ? to.cents : undefined;
  const paid = amount ?? due;
  const keep = async () => {
    if (paid === undefined || paid === 0) return;
    const signed = back ? cents(-paid) : paid;
    const left = cents(to.cents - signed);
    const kept = await book(
      {
        kind: 'payment-booked',
        date: date ?? today,
        ...(to.payee && { payee: to.payee }),
        ...(number && { document: { number } }),
        lines: [{ lot: folder.lot, cents: signed }],
      },
      left === 0
        ? 'Paid in full.'
        : left > 0
          ? `Recorded. ${formatMoney(left)} is still owed.`
          : `Recorded. That is ${formatMoney(cents(-left))} more than is owed.`,
    );
    if (kept) {
      setAmount(undefined);
      setNumber(undefined);
      setBack(false);
    }
  };
  return (
    <details class="panel">
      <summary>Payment</summary>
      <div class="stack">
        <div class="fields">
          {owed.length > 1 && (
            <ChoiceInput
              label="Paid to"
              value={to.payee}
              choices={owed.map(({ payee = 'Auction', cents: amount }) => ({
                value: payee,
                label: `${payee}, ${formatMoney(amount)}`,
              }))}
              onCommit={setChosen}
            />
          )}
          <MoneyInput
            label="Amount paid"
            value={paid}
            hint={due === undefined ? 'Nothing is owed' : `${formatMoney(due)} is owed; less is a part payment`}
            onCommit={setAmount}
          />
          <DateInput label="Payment date" value={date ?? today} onCommit={setDate} />
          <TextInput label="Check or transfer no." value={number} longest={120} onCommit={setNumber} />
        </div>
        <CheckInput label="This is a refund" value={back} onCommit={setBack} />
        <div class="row">
          <button type="button" class="main" disabled={paid === undefined || paid === 0} onClick={keep}>
            Record the payment
          </button>
        </div>
      </div>
    </details>
  );
}
