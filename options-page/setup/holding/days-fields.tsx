import type { Carrying } from '../../../src/domain/carrying/carrying-rules.ts';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';

export interface DaysFieldsProps {
  readonly carrying: Carrying;
  readonly onChange: (set: Partial<Carrying>, said: string) => void;
}

const KINDS = [
  { value: 'median', label: 'Half of them sell within' },
  { value: 'fixed', label: 'Count a fixed number of days' },
] as const;

/** How long a car takes to sell. */
export function DaysFields({ carrying, onChange }: DaysFieldsProps) {
  const { daysToSell, horizonDays } = carrying;
  return (
    <fieldset class="stack">
      <legend>Days to sell</legend>
      <RadioChoice
        legend="Count by"
        value={daysToSell.kind}
        choices={KINDS}
        onCommit={(kind) =>
          onChange(
            { daysToSell: { kind, days: kind === 'median' ? Math.max(1, daysToSell.days) : daysToSell.days } },
            'Saved.',
          )
        }
      />
      <div class="fields">
        <NumberInput
          label={daysToSell.kind === 'median' ? 'Half sell within' : 'Every car takes'}
          value={daysToSell.days}
          least={daysToSell.kind === 'median' ? 1 : 0}
          most={3650}
          unit="days"
          required
          onCommit={(days) =>
            days !== undefined && onChange({ daysToSell: { ...daysToSell, days } }, `Days to sell: ${days}.`)
          }
        />
        {daysToSell.kind === 'median' && (
          <NumberInput
            label="Wholesaled after"
            value={horizonDays}
            least={1}
            most={3650}
            unit="days"
            required
            hint="No car is held longer"
            onCommit={(days) => days !== undefined && onChange({ horizonDays: days }, `Wholesaled after ${days} days.`)}
          />
        )}
      </div>
      <p class="quiet small setup-prose">
        {daysToSell.kind === 'median'
          ? 'The whole spread follows from the median, slow sellers included. Your own sales correct it as they come in.'
          : 'A fixed number ignores slow sellers, so it counts too little for them.'}
      </p>
    </fieldset>
  );
}
