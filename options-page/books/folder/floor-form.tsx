import { useState } from 'preact/hooks';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

type Move = 'draw' | 'payoff';
const MOVES: readonly { value: Move; label: string }[] = [
  { value: 'draw', label: 'Floor-plan advance' },
  { value: 'payoff', label: 'Floor-plan payoff' },
];

/** What the lender puts in, and what it gets back: all of it, or a curtailment. */
export function FloorForm({ folder }: { folder: PurchaseFolder }) {
  const { today } = useBooks();
  const book = useBook();
  const [move, setMove] = useState<Move>(folder.floorOwed > 0 ? 'payoff' : 'draw');
  const [amount, setAmount] = useState<Cents>();
  const [date, setDate] = useState<LocalDate>();
  const expected = folder.expected?.financed;
  const likely = move === 'payoff' ? folder.floorOwed : (expected ?? 0);
  const value = amount ?? (likely > 0 ? (likely as Cents) : undefined);
  const keep = async () => {
    if (value === undefined || value === 0) return;
    const kept = await book(
      { kind: 'floor-booked', lot: folder.lot, move, cents: value, date: date ?? today },
      move === 'draw'
        ? `Floor-plan advance of ${formatMoney(value)} recorded.`
        : `Floor-plan payoff of ${formatMoney(value)} recorded.`,
    );
    if (kept) {
      setAmount(undefined);
      setMove('payoff');
    }
  };
  return (
    <details class="panel">
      <summary>Floor plan</summary>
      <div class="stack">
        <RadioChoice legend="Type" value={move} choices={MOVES} onCommit={setMove} />
        <div class="fields">
          <MoneyInput
            label="Principal"
            value={value}
            hint={move === 'draw' ? 'As expected on the worksheet' : 'A part payment is a curtailment'}
            onCommit={setAmount}
          />
          <DateInput label="Date on the lender’s statement" value={date ?? today} onCommit={setDate} />
        </div>
        <p class="quiet small">Enter interest and lender fees as bills.</p>
        <div class="row">
          <button type="button" class="main" disabled={value === undefined || value === 0} onClick={keep}>
            Record
          </button>
        </div>
      </div>
    </details>
  );
}
