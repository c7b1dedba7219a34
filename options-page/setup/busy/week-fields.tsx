import { weekdayWord } from '../../../src/domain/setup/setup-words.ts';
import type { RushHours } from '../../../src/domain/setup/store.ts';
import { WEEKDAYS, type Weekday } from '../../../src/domain/time/weekdays.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { timeInWords } from '../../../src/views/words/time-of-day-words.ts';
import { nextSpan } from './next-span.ts';
import { type Span, SpanRow } from './span-row.tsx';

export interface WeekFieldsProps {
  readonly weekly: readonly RushHours[];
  readonly path: readonly PropertyKey[];
  readonly onChange: (weekly: RushHours[], said: string) => void;
}

/** The usual week, day by day. */
export function WeekFields({ weekly, path, onChange }: WeekFieldsProps) {
  const [root, focusNext] = useFocusNext<HTMLFieldSetElement>();
  return (
    <fieldset class="stack" ref={root}>
      <legend>The usual week</legend>
      <div class="week-days">
        {WEEKDAYS.map((weekday) => (
          <DayFields
            key={weekday}
            weekday={weekday}
            weekly={weekly}
            path={path}
            focusNext={focusNext}
            onChange={onChange}
          />
        ))}
      </div>
    </fieldset>
  );
}

function DayFields(props: WeekFieldsProps & { weekday: Weekday; focusNext: (key: string) => void }) {
  const { weekday, weekly, path, focusNext, onChange } = props;
  const day = weekdayWord(weekday);
  // The hours of all days stand in one list; a day's keep their place in it.
  const own = weekly.flatMap((hours, index) => (hours.weekday === weekday ? [{ hours, index }] : []));
  return (
    <section class="week-day" aria-label={day}>
      <p class="strong">{day}</p>
      <div class="week-spans">
        {own.length === 0 && <span class="quiet">No busy hours</span>}
        {own.map(({ hours, index }) => (
          <SpanRow
            key={index}
            span={hours}
            name={day}
            path={[...path, index]}
            focusKey={`row-${index}`}
            onChange={(span) =>
              onChange(replaceAt(weekly, index, { weekday, ...span }), `Busy on ${day} from ${spanInWords(span)}.`)
            }
            onRemove={() => {
              focusNext(`add-${weekday}`);
              onChange(removeAt(weekly, index), `No longer busy on ${day} from ${spanInWords(hours)}.`);
            }}
          />
        ))}
        <span data-focus={`add-${weekday}`}>
          <button
            type="button"
            class="plain"
            aria-label={`Add hours on ${day}`}
            onClick={() => {
              const span = nextSpan(own.map(({ hours }) => hours));
              focusNext(`row-${weekly.length}`);
              onChange([...weekly, { weekday, ...span }], `Busy on ${day} from ${spanInWords(span)}.`);
            }}
          >
            Add hours
          </button>
        </span>
      </div>
    </section>
  );
}

const spanInWords = ({ from, to }: Span) => `${timeInWords(from)} to ${timeInWords(to)}`;
