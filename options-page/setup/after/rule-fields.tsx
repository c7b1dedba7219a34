import type { BusinessCalendar } from '../../../src/domain/deadline/business-calendar.ts';
import { deadlineOf } from '../../../src/domain/deadline/deadline-of.ts';
import { COUNTED_FROM, type CountedFrom, type DeadlineRule } from '../../../src/domain/deadline/deadline-rule.ts';
import { FROM_WORDS, ruleInWords, skippedInWords } from '../../../src/domain/deadline/deadline-words.ts';
import { sayTime } from '../../../src/domain/time/say-time.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import type { Zone } from '../../../src/domain/time/zone.ts';
import { useNow } from '../../../src/ui/hooks/use-now.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { TimeOfDayInput } from '../../../src/ui/inputs/time-of-day-input.tsx';
import { FaultsAt } from '../faults-at.tsx';
import { newRule } from './new-rule.ts';

export interface RuleFieldsProps {
  readonly title: string;
  readonly rule: DeadlineRule | undefined;
  /** What a new rule of this kind counts from, unless changed. */
  readonly from: CountedFrom;
  readonly zone: Zone;
  readonly calendar: BusinessCalendar;
  readonly path: readonly PropertyKey[];
  readonly onChange: (rule: DeadlineRule | undefined) => void;
}

/** One deadline of a venue: none, or how it is counted, with the day on which it would end if it began now. */
export function RuleFields({ title, rule, from, onChange, ...place }: RuleFieldsProps) {
  if (rule === undefined) {
    return (
      <div class="row apart rule-none">
        <span>{title}</span>
        <button type="button" aria-label={`Set a deadline: ${title}`} onClick={() => onChange(newRule(from))}>
          Set a deadline
        </button>
      </div>
    );
  }
  return (
    <details class="rule-fold">
      <summary>
        <span class="strong">{title}</span> <span class="quiet">{ruleInWords(rule)}</span>
      </summary>
      <RuleEditor title={title} rule={rule} onChange={onChange} {...place} />
    </details>
  );
}

type RuleEditorProps = Omit<RuleFieldsProps, 'from' | 'rule'> & { readonly rule: DeadlineRule };

function RuleEditor({ title, rule, zone, calendar, path, onChange }: RuleEditorProps) {
  const set = (part: Partial<DeadlineRule>) => onChange({ ...rule, ...part });
  const inDays = rule.unit !== 'hours';
  return (
    <div class="stack rule-body">
      <div class="fields">
        <NumberInput
          label="How many"
          value={rule.amount}
          least={0}
          most={1500}
          required
          onCommit={(amount = 0) => set({ amount })}
        />
        <ChoiceInput
          label="Of what"
          value={rule.unit}
          choices={UNITS}
          onCommit={(unit) => set({ unit: one(UNITS, unit, rule.unit) })}
        />
        <ChoiceInput
          label="Counted from"
          value={rule.from}
          choices={FROMS}
          onCommit={(chosen) => set({ from: one(FROMS, chosen, rule.from) })}
        />
        <TimeOfDayInput
          label={inDays ? 'Until (venue’s clock)' : 'Until, if moved'}
          value={rule.cutOff}
          required
          onCommit={(cutOff = rule.cutOff) => set({ cutOff })}
        />
        {inDays && (
          <ChoiceInput
            label="Day 1 is"
            value={rule.firstDay}
            choices={FIRST_DAYS}
            onCommit={(firstDay) => set({ firstDay: one(FIRST_DAYS, firstDay, rule.firstDay) })}
          />
        )}
        {rule.unit !== 'business-days' && (
          <ChoiceInput
            label="If it ends on a closed day"
            value={rule.whenClosed}
            choices={CLOSED}
            onCommit={(whenClosed) => set({ whenClosed: one(CLOSED, whenClosed, rule.whenClosed) })}
          />
        )}
      </div>
      {inDays && (
        <CheckInput
          label="Anything after the cut-off hour or on a closed day counts as the next business day"
          value={rule.lateCountsNextDay}
          onCommit={(lateCountsNextDay) => set({ lateCountsNextDay })}
        />
      )}
      <FaultsAt path={path} />
      <div class="row apart">
        <Example rule={rule} zone={zone} calendar={calendar} />
        <button type="button" class="plain" aria-label={`Remove: ${title}`} onClick={() => onChange(undefined)}>
          Remove
        </button>
      </div>
    </div>
  );
}

function Example({ rule, zone, calendar }: { rule: DeadlineRule; zone: Zone; calendar: BusinessCalendar }) {
  const now = useNow(MINUTE);
  const due = deadlineOf(rule, now, { zone, calendar });
  return (
    <p class="small">
      If {FROM_WORDS[rule.from]} {rule.from === 'title' ? '' : 'were '}now, it would end{' '}
      <span class="strong">{sayTime(due.at, zone)}</span> there. {skippedInWords(due)}
    </p>
  );
}

const UNITS = [
  { value: 'hours', label: 'hours' },
  { value: 'calendar-days', label: 'calendar days' },
  { value: 'business-days', label: 'business days' },
] as const;
const FROMS = COUNTED_FROM.map((value) => ({ value, label: FROM_WORDS[value] }));
const FIRST_DAYS = [
  { value: 'next', label: 'the day after it' },
  { value: 'same', label: 'the same day' },
] as const;
const CLOSED = [
  { value: 'stays', label: 'it ends that day' },
  { value: 'next-business-day', label: 'it ends the next business day' },
] as const;

/** A select gives text; this is the choice that has it. */
const one = <Value extends string>(
  choices: readonly { readonly value: Value }[],
  text: string | undefined,
  otherwise: Value,
): Value => choices.find((choice) => choice.value === text)?.value ?? otherwise;
