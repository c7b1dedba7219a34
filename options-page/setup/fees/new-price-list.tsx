import { useState } from 'preact/hooks';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';

export interface NewPriceListProps {
  /** Starts it, or says why not. */
  readonly onStart: (date: LocalDate) => string | undefined;
}

/** "The sale changes its fees on the first of March": the old list ends the day before, and a copy of it begins. */
export function NewPriceList({ onStart }: NewPriceListProps) {
  const [date, setDate] = useState<LocalDate>();
  const [fault, setFault] = useState<string>();
  return (
    <fieldset class="stack">
      <legend>When the venue changes its fees</legend>
      <p class="quiet small setup-prose">
        The rates above then end the day before, and a copy starts that you can change. Lots that close earlier keep the
        old rates.
      </p>
      <div class="row setup-foot">
        <DateInput
          label="New rates from"
          value={date}
          onCommit={(next) => {
            setDate(next);
            setFault(undefined);
          }}
        />
        <button
          type="button"
          onClick={() => {
            const refused = date === undefined ? 'Choose the first day of the new rates.' : onStart(date);
            setFault(refused);
            if (refused === undefined) setDate(undefined);
          }}
        >
          Start new rates
        </button>
      </div>
      {fault && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
    </fieldset>
  );
}
