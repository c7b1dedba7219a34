import { useState } from 'preact/hooks';
import type { RushException } from '../../../src/domain/setup/store.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { dayInWords } from '../../../src/views/words/date-words.ts';
import { ExceptionEntry } from './exception-entry.tsx';
import { nextSpan } from './next-span.ts';

export interface ExceptionFieldsProps {
  readonly exceptions: readonly RushException[];
  readonly path: readonly PropertyKey[];
  readonly onChange: (exceptions: RushException[], said: string) => void;
}

/** Dates that differ from their weekday. */
export function ExceptionFields({ exceptions, path, onChange }: ExceptionFieldsProps) {
  const [date, setDate] = useState<LocalDate>();
  const [fault, setFault] = useState<string>();
  const [root, focusNext] = useFocusNext<HTMLFieldSetElement>();
  const add = (hours: RushException['hours']) => {
    if (date === undefined) return setFault('Choose the date first.');
    if (exceptions.some((each) => each.date === date)) return setFault('This date is already in the list.');
    setFault(undefined);
    setDate(undefined);
    focusNext(date);
    const next = [...exceptions, { date, note: '', hours }].sort((a, b) => (a.date < b.date ? -1 : 1));
    return onChange(next, `${dayInWords(date)} has its own hours.`);
  };
  return (
    <fieldset class="stack" ref={root}>
      <legend>Dates with other hours</legend>
      {exceptions.length === 0 && (
        <p class="quiet small setup-prose">
          None yet. On a holiday the store may be closed and not busy; the day before it may be busier than usual.
        </p>
      )}
      {exceptions.map((exception, index) => (
        <ExceptionEntry
          key={exception.date}
          exception={exception}
          title={dayInWords(exception.date)}
          path={[...path, index]}
          onChange={(next) =>
            onChange(replaceAt(exceptions, index, next), `Hours of ${dayInWords(exception.date)} saved.`)
          }
          onRemove={() => {
            focusNext('date');
            onChange(removeAt(exceptions, index), `${dayInWords(exception.date)} has its usual hours again.`);
          }}
        />
      ))}
      <div class="row setup-foot" data-focus="date">
        <DateInput
          label="Date"
          value={date}
          onCommit={(next) => {
            setDate(next);
            setFault(undefined);
          }}
        />
        <button type="button" onClick={() => add([])}>
          Closed that day
        </button>
        <button type="button" onClick={() => add([nextSpan([])])}>
          Other hours that day
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
