import { useState } from 'preact/hooks';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { MOST_DATED, type PurseEntry } from '../../src/domain/setup/purse-entry.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import { DateInput } from '../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { Ledger } from '../../src/ui/tables/ledger.tsx';

type Moves = NonNullable<PurseEntry['moves']>;

interface DatedMoneyProps {
  readonly purse: PurseEntry;
  readonly onChange: (moves: Moves, said: string) => void;
}

/** Money that is known to come or go on a day, such as a payday or a car that is sold. */
export function DatedMoney({ purse, onChange }: DatedMoneyProps) {
  const moves = purse.moves ?? [];
  const [date, setDate] = useState<LocalDate>();
  const [amount, setAmount] = useState<Cents>();
  const [what, setWhat] = useState<string>();
  const [fault, setFault] = useState<string>();
  // The boxes are emptied by being drawn anew.
  const [round, setRound] = useState(0);
  const add = (sign: 1 | -1) => {
    if (date === undefined || amount === undefined || amount === 0)
      return setFault('Enter the day and the amount first.');
    if (moves.length >= MOST_DATED) return setFault(`At most ${MOST_DATED}. Remove one that is past.`);
    const move = {
      date,
      cents: cents(sign * amount),
      what: what?.trim().slice(0, 80) || (sign > 0 ? 'Money in' : 'Money out'),
    };
    onChange(
      [...moves, move].sort((a, b) => (a.date < b.date ? -1 : 1)),
      `${move.what}: ${formatMoney(amount)} on ${sayDate(date)}.`,
    );
    setDate(undefined);
    setAmount(undefined);
    setWhat(undefined);
    setFault(undefined);
    setRound(round + 1);
  };
  return (
    <details class="plan-dated">
      <summary>Money in and out on a known day{moves.length > 0 && ` (${moves.length})`}</summary>
      <div class="stack">
        {moves.length > 0 && (
          <Ledger
            rows={moves}
            rowKey={(_, index) => index}
            columns={[
              { label: 'Day', cell: (move) => sayDate(move.date) },
              { label: 'What', cell: (move) => move.what },
              { label: 'In', number: true, cell: (move) => (move.cents > 0 ? formatMoney(move.cents) : '') },
              { label: 'Out', number: true, cell: (move) => (move.cents < 0 ? formatMoney(cents(-move.cents)) : '') },
              {
                label: 'Remove',
                quietHead: true,
                cell: (move, index) => (
                  <button
                    type="button"
                    class="plain"
                    aria-label={`Remove ${move.what}, ${sayDate(move.date)}`}
                    onClick={() =>
                      onChange(
                        moves.filter((_, i) => i !== index),
                        `${move.what} removed.`,
                      )
                    }
                  >
                    Remove
                  </button>
                ),
              },
            ]}
          />
        )}
        <div class="fields" key={round}>
          <DateInput label="Day" value={date} onCommit={setDate} />
          <MoneyInput label="Amount" value={amount} onCommit={setAmount} />
          <TextInput label="What it is" value={what} onCommit={setWhat} />
        </div>
        <div class="row">
          <button type="button" onClick={() => add(1)}>
            Money in
          </button>
          <button type="button" onClick={() => add(-1)}>
            Money out
          </button>
        </div>
        {fault !== undefined && (
          <p class="fault" role="alert">
            {fault}
          </p>
        )}
      </div>
    </details>
  );
}
