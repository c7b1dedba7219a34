import { useState } from 'preact/hooks';
import { COST_KINDS, type CostKind } from '../../../src/domain/accounts/cost-kind.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { NotedCost, NotedPayment } from '../../../src/journal/states/books-state.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { COST_WORDS } from '../../../src/views/books/cost-words.ts';
import { useBook } from '../use-book.ts';

interface CorrectLineProps {
  readonly line: NotedCost | NotedPayment;
  readonly what: string;
  readonly onDone: () => void;
}

/** The right figures of one recorded line. What was recorded stays in the full history. */
export function CorrectLine({ line, what, onDone }: CorrectLineProps) {
  const book = useBook();
  const bill = 'cost' in line ? line : undefined;
  const [amount, setAmount] = useState(line.cents);
  const [date, setDate] = useState(line.date);
  const [label, setLabel] = useState(bill?.label);
  const [cost, setCost] = useState<CostKind | undefined>(bill?.cost);
  const [number, setNumber] = useState(line.document?.number);
  const to = {
    ...(amount !== line.cents && { cents: amount }),
    ...(date !== line.date && { date }),
    ...(label !== undefined && label !== bill?.label && { label }),
    ...(cost !== undefined && cost !== bill?.cost && { cost }),
    ...(number !== undefined && number !== line.document?.number && { number }),
  };
  const changed = Object.keys(to).length > 0 && amount !== 0;
  const save = async () => {
    const kept = await book(
      { kind: 'line-corrected', lot: line.lot, line: line.key, to },
      `${what} corrected: ${formatMoney(amount)}.`,
    );
    if (kept) onDone();
  };
  return (
    <fieldset class="panel stack">
      <legend>Correct {what}</legend>
      <div class="fields">
        <MoneyInput
          label="Right amount"
          value={amount}
          signed
          required
          hint={bill === undefined ? 'Below zero for a refund' : 'Below zero for a credit'}
          onCommit={(next) => next !== undefined && setAmount(next)}
        />
        <DateInput label="Right date" value={date} onCommit={(next) => next !== undefined && setDate(next)} />
        {bill !== undefined && (
          <>
            <ChoiceInput
              label="For"
              value={cost}
              choices={COST_KINDS.map((kind) => ({ value: kind, label: COST_WORDS[kind] }))}
              onCommit={(value) => setCost(COST_KINDS.find((kind) => kind === value))}
            />
            <TextInput label="Description" value={label} longest={120} onCommit={setLabel} />
          </>
        )}
        <TextInput
          label={bill === undefined ? 'Check or transfer no.' : 'Bill no.'}
          value={number}
          longest={120}
          onCommit={setNumber}
        />
      </div>
      <div class="row">
        <button type="button" class="main" disabled={!changed} onClick={save}>
          Save the correction
        </button>
        <button type="button" onClick={onDone}>
          Cancel
        </button>
      </div>
    </fieldset>
  );
}
