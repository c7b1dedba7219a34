import { useState } from 'preact/hooks';
import type { BusinessCalendar } from '../../../src/domain/deadline/business-calendar.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { removeAt } from '../../../src/ui/tables/list-edit.ts';
import { dayInWords } from '../../../src/views/words/date-words.ts';

export interface DatesFieldsProps {
  readonly legend: string;
  readonly dates: BusinessCalendar['closed'];
  readonly onChange: (dates: BusinessCalendar['closed']) => void;
}

/** Single dates, each with a word on why. */
export function DatesFields({ legend, dates, onChange }: DatesFieldsProps) {
  const [date, setDate] = useState<LocalDate>();
  const [note, setNote] = useState('');
  const [fault, setFault] = useState<string>();
  const add = () => {
    if (date === undefined) return setFault('Choose the date first.');
    if (dates.some((each) => each.date === date)) return setFault('This date is already in the list.');
    setFault(undefined);
    setDate(undefined);
    setNote('');
    return onChange([...dates, { date, note: note.trim() }].sort((a, b) => (a.date < b.date ? -1 : 1)));
  };
  return (
    <fieldset class="stack">
      <legend class="small">{legend}</legend>
      {dates.map((each, index) => (
        <p key={each.date} class="row">
          <span>
            {dayInWords(each.date)}
            {each.note !== '' && `: ${each.note}`}
          </span>
          <button
            type="button"
            class="plain"
            aria-label={`Remove ${dayInWords(each.date)}`}
            onClick={() => onChange(removeAt(dates, index))}
          >
            Remove
          </button>
        </p>
      ))}
      <div class="row setup-foot">
        <DateInput
          label={`${legend}: date`}
          value={date}
          onCommit={(next) => {
            setDate(next);
            setFault(undefined);
          }}
        />
        <div class="field">
          <label class="label">
            Why
            <input
              value={note}
              maxLength={80}
              placeholder="Stock count"
              onInput={(event) => setNote(event.currentTarget.value)}
            />
          </label>
        </div>
        <button type="button" aria-label={`Add to: ${legend}`} onClick={add}>
          Add
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
