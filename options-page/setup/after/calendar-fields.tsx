import type { BusinessCalendar } from '../../../src/domain/deadline/business-calendar.ts';
import { HOLIDAY_IDS, HOLIDAY_NAMES, holidaysOf } from '../../../src/domain/deadline/us-holidays.ts';
import { weekdayWord } from '../../../src/domain/setup/setup-words.ts';
import { sayDate } from '../../../src/domain/time/say-time.ts';
import { HOUR } from '../../../src/domain/time/units.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { WEEKDAYS } from '../../../src/domain/time/weekdays.ts';
import type { Zone } from '../../../src/domain/time/zone.ts';
import { useNow } from '../../../src/ui/hooks/use-now.ts';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';
import { FaultsAt } from '../faults-at.tsx';
import { DatesFields } from './dates-fields.tsx';

export interface CalendarFieldsProps {
  readonly calendar: BusinessCalendar;
  readonly zone: Zone;
  readonly path: readonly PropertyKey[];
  readonly onChange: (calendar: BusinessCalendar) => void;
}

const KEPT = [
  { value: 'federal', label: 'Federal holidays' },
  { value: 'bank', label: 'Bank holidays' },
  { value: 'none', label: 'No holidays' },
] as const;

/** The days on which a venue works. */
export function CalendarFields({ calendar, zone, path, onChange }: CalendarFieldsProps) {
  const year = Number(dateIn(zone, useNow(HOUR)).slice(0, 4));
  const { holidays } = calendar;
  return (
    <fieldset class="stack">
      <legend>Business days</legend>
      <Ticks
        legend="Weekly days off"
        choices={WEEKDAYS.map((day) => ({ value: day, label: weekdayWord(day) }))}
        ticked={(day) => calendar.daysOff.includes(day)}
        onTick={(day, on) => onChange({ ...calendar, daysOff: toggled(calendar.daysOff, day, on) })}
      />
      <RadioChoice
        legend="Holidays"
        value={holidays}
        choices={KEPT}
        onCommit={(kept) => onChange({ ...calendar, holidays: kept })}
      />
      {holidays !== 'none' && (
        <>
          <p class="quiet small setup-prose">
            {holidays === 'federal'
              ? 'A Saturday holiday is observed on Friday, a Sunday holiday on Monday.'
              : 'A Sunday holiday is observed on Monday. A Saturday holiday closes no other day.'}{' '}
            Uncheck a holiday on which this venue is open.
          </p>
          <Ticks
            legend={`Closed on (${year})`}
            choices={HOLIDAY_IDS.map((id) => ({ value: id, label: holidayLabel(id, year, holidays) }))}
            ticked={(id) => !calendar.worked.includes(id)}
            onTick={(id, on) => onChange({ ...calendar, worked: toggled(calendar.worked, id, !on) })}
          />
        </>
      )}
      <DatesFields
        legend="Also closed on"
        dates={calendar.closed}
        onChange={(closed) => onChange({ ...calendar, closed })}
      />
      <DatesFields legend="Open anyway on" dates={calendar.open} onChange={(open) => onChange({ ...calendar, open })} />
      <FaultsAt path={path} />
    </fieldset>
  );
}

function holidayLabel(id: (typeof HOLIDAY_IDS)[number], year: number, keeping: 'federal' | 'bank'): string {
  const day = holidaysOf(year, keeping).find((holiday) => holiday.id === id);
  return day === undefined ? HOLIDAY_NAMES[id] : `${HOLIDAY_NAMES[id]}, ${sayDate(day.observed)}`;
}

interface TicksProps<Value extends string> {
  readonly legend: string;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
  readonly ticked: (value: Value) => boolean;
  readonly onTick: (value: Value, on: boolean) => void;
}

function Ticks<Value extends string>({ legend, choices, ticked, onTick }: TicksProps<Value>) {
  return (
    <fieldset>
      <legend class="small">{legend}</legend>
      <span class="tick-grid">
        {choices.map(({ value, label }) => (
          <label key={value} class="tick">
            <input
              type="checkbox"
              checked={ticked(value)}
              onChange={(event) => onTick(value, event.currentTarget.checked)}
            />
            {label}
          </label>
        ))}
      </span>
    </fieldset>
  );
}

const toggled = <Value extends string>(list: readonly Value[], value: Value, on: boolean): Value[] =>
  on ? [...list.filter((each) => each !== value), value] : list.filter((each) => each !== value);
