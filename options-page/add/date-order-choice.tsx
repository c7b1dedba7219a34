import type { DateOrder } from '../../src/domain/close/date-order.ts';
import { type CloseHabits, orderShown } from '../../src/intake/close-habits.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';

interface DateOrderChoiceProps {
  readonly habits: CloseHabits;
  /** What the user chose; undefined while he leaves it to the file. */
  readonly order: DateOrder | undefined;
  readonly onChoose: (order: DateOrder | undefined) => void;
}

const ORDERS: readonly { readonly value: DateOrder; readonly label: string }[] = [
  { value: 'month-first', label: 'Month first (11/28)' },
  { value: 'day-first', label: 'Day first (28/11)' },
];

/** Which of two figures is the month: what the file shows, and how to say otherwise. Nothing where no cell leaves it open. */
export function DateOrderChoice({ habits, order, onChoose }: DateOrderChoiceProps) {
  const shown = orderShown(habits);
  if (shown === null) return null;
  const asked = shown.found === 'ask' && order === undefined;
  return (
    <div class={asked ? 'note warning stack' : 'stack'} role={asked ? 'alert' : undefined}>
      {asked && (
        <p>
          Nothing in this file shows whether the day or the month comes first. Choose it here, or each such close stays
          in doubt.
        </p>
      )}
      <ChoiceInput
        label="Dates in this file"
        value={order}
        none={noneWords(shown.found, shown.because)}
        choices={ORDERS}
        onCommit={(chosen) => onChoose(ORDERS.find(({ value }) => value === chosen)?.value)}
      />
    </div>
  );
}

function noneWords(found: string, because: string | undefined): string {
  if (found === 'ask') return 'Not set';
  return `${found === 'day-first' ? 'Day first' : 'Month first'}, as in ${because ?? 'the file'}`;
}
