import type { LocalTime } from '../../../src/domain/time/local-date.ts';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { TimeOfDayInput } from '../../../src/ui/inputs/time-of-day-input.tsx';
import { timeInWords } from '../../../src/views/words/time-of-day-words.ts';
import { FaultsAt } from '../faults-at.tsx';

export interface Span {
  readonly from: LocalTime;
  readonly to: LocalTime;
  /** Who is on duty then; absent while nobody is named. */
  readonly who?: string | undefined;
}

export interface SpanRowProps {
  readonly span: Span;
  /** Which hours these are, for a screen reader: "Saturday". */
  readonly name: string;
  readonly path: readonly PropertyKey[];
  readonly focusKey: string;
  readonly onChange: (span: Span) => void;
  readonly onRemove: () => void;
}

/** Busy from one time of day to another. */
export function SpanRow({ span, name, path, focusKey, onChange, onRemove }: SpanRowProps) {
  return (
    <div class="span-row" data-focus={focusKey}>
      <TimeOfDayInput
        label={`${name}, from`}
        value={span.from}
        required
        onCommit={(from) => from !== undefined && onChange({ ...span, from })}
      />
      <span aria-hidden="true">to</span>
      <TimeOfDayInput
        label={`${name}, to`}
        value={span.to}
        required
        onCommit={(to) => to !== undefined && onChange({ ...span, to })}
      />
      <TextInput
        label={`${name} from ${timeInWords(span.from)}, on duty`}
        value={span.who}
        longest={80}
        placeholder="Who is on duty"
        onCommit={(who) => onChange(who === undefined ? { from: span.from, to: span.to } : { ...span, who })}
      />
      <button
        type="button"
        class="plain"
        aria-label={`Remove the hours from ${timeInWords(span.from)} to ${timeInWords(span.to)}, ${name}`}
        onClick={onRemove}
      >
        Remove
      </button>
      <FaultsAt path={path} />
    </div>
  );
}
