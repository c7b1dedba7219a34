import type { CountedFrom, DeadlineRule } from '../../../src/domain/deadline/deadline-rule.ts';
import { REASON_WORDS } from '../../../src/domain/dispute/reason-words.ts';
import {
  type AfterSaleRules,
  afterSaleRulesSchema,
  DISPUTE_REASONS,
  type DisputeReason,
  WIN_STEPS,
  type WinStep,
} from '../../../src/domain/setup/after-sale-rules.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { EntryFold } from '../entry-fold.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import { CalendarFields } from './calendar-fields.tsx';
import { RuleFields } from './rule-fields.tsx';
import { rulesSet } from './rules-set.ts';

export interface VenueAfterProps {
  readonly venue: Venue;
  readonly path: readonly PropertyKey[];
  readonly openAtFirst: boolean;
  readonly onChange: (venue: Venue, said: string) => void;
}

/** One venue's terms about the time after the hammer. */
export function VenueAfter({ venue, path, openAtFirst, onChange }: VenueAfterProps) {
  const rules = venue.afterSale;
  const set = (afterSale: AfterSaleRules) =>
    onChange({ ...venue, afterSale }, `${venue.name}: after-sale terms saved.`);
  return (
    <EntryFold
      title={venue.name === '' ? 'New venue' : venue.name}
      summary={summaryOf(rules)}
      path={path}
      openAtFirst={openAtFirst}
      focusKey={venue.id}
    >
      {rules === undefined ? (
        <Start venue={venue} onStart={set} />
      ) : (
        <Rules venue={venue} rules={rules} path={path} onChange={set} />
      )}
    </EntryFold>
  );
}

function summaryOf(rules: AfterSaleRules | undefined): string {
  const count = rules === undefined ? 0 : rulesSet(rules);
  return count === 0 ? 'no deadlines yet' : `${count} ${count === 1 ? 'deadline' : 'deadlines'}`;
}

/** Terms are often alike: what was written for one venue is a good start for the next. */
function Start({ venue, onStart }: { venue: Venue; onStart: (rules: AfterSaleRules) => void }) {
  const { setup } = useSetupEdit();
  const others = setup.venues.filter((other) => other.id !== venue.id && other.afterSale !== undefined);
  return (
    <div class="row">
      <button type="button" class="main" onClick={() => onStart(afterSaleRulesSchema.parse({}))}>
        Add its deadlines
      </button>
      {others.map((other) => (
        <button key={other.id} type="button" onClick={() => onStart(other.afterSale ?? afterSaleRulesSchema.parse({}))}>
          Copy from {other.name}
        </button>
      ))}
    </div>
  );
}

interface RulesProps {
  readonly venue: Venue;
  readonly rules: AfterSaleRules;
  readonly path: readonly PropertyKey[];
  readonly onChange: (rules: AfterSaleRules) => void;
}

function Rules({ venue, rules, path, onChange }: RulesProps) {
  const place = { zone: venue.zone, calendar: rules.calendar };
  const at = [...path, 'afterSale'];
  const ofReason = (reason: DisputeReason, key: 'claim' | 'answer', rule: DeadlineRule | undefined) => {
    const { [key]: _, ...rest } = rules.disputes[reason] ?? {};
    const both = rule === undefined ? rest : { ...rest, [key]: rule };
    const { [reason]: __, ...others } = rules.disputes;
    onChange({ ...rules, disputes: Object.keys(both).length === 0 ? others : { ...others, [reason]: both } });
  };
  const ofStep = (step: WinStep, rule: DeadlineRule | undefined) => {
    const { [step]: _, ...others } = rules.steps;
    onChange({ ...rules, steps: rule === undefined ? others : { ...others, [step]: rule } });
  };
  return (
    <>
      <fieldset class="stack">
        <legend>After winning</legend>
        {WIN_STEPS.map((step) => (
          <RuleFields
            key={step}
            title={STEP_TITLES[step]}
            rule={rules.steps[step]}
            from={STEP_FROM[step]}
            path={[...at, 'steps', step]}
            onChange={(rule) => ofStep(step, rule)}
            {...place}
          />
        ))}
      </fieldset>
      <fieldset class="stack">
        <legend>Our claim deadlines</legend>
        {DISPUTE_REASONS.map((reason) => (
          <RuleFields
            key={reason}
            title={REASON_WORDS[reason]}
            rule={rules.disputes[reason]?.claim}
            from={CLAIM_FROM[reason]}
            path={[...at, 'disputes', reason, 'claim']}
            onChange={(rule) => ofReason(reason, 'claim', rule)}
            {...place}
          />
        ))}
      </fieldset>
      <fieldset class="stack">
        <legend>Our answer deadlines</legend>
        {DISPUTE_REASONS.map((reason) => (
          <RuleFields
            key={reason}
            title={`Answer: ${REASON_WORDS[reason]}`}
            rule={rules.disputes[reason]?.answer}
            from="notice"
            path={[...at, 'disputes', reason, 'answer']}
            onChange={(rule) => ofReason(reason, 'answer', rule)}
            {...place}
          />
        ))}
      </fieldset>
      <CalendarFields
        calendar={rules.calendar}
        zone={venue.zone}
        path={[...at, 'calendar']}
        onChange={(calendar) => onChange({ ...rules, calendar })}
      />
    </>
  );
}

const STEP_TITLES: Readonly<Record<WinStep, string>> = {
  pay: 'Pay by',
  transport: 'Arrange transport by',
  deliver: 'Deliver by',
  inspect: 'Inspect within',
  title: 'Title by',
  fund: 'Floor or fund by',
};
const STEP_FROM: Readonly<Record<WinStep, CountedFrom>> = {
  pay: 'sale',
  transport: 'payment',
  deliver: 'sale',
  inspect: 'delivery',
  title: 'sale',
  fund: 'sale',
};
const CLAIM_FROM: Readonly<Record<DisputeReason, CountedFrom>> = {
  'bid-not-taken': 'sale',
  'hidden-defect': 'delivery',
  'wrong-description': 'delivery',
  'title-missing': 'sale',
  'sale-undone': 'notice',
  other: 'sale',
};
