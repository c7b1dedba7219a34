import { DAY_COUNTS, type DayCount, type FloorPlan } from '../../../src/domain/carrying/carrying-rules.ts';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { withField } from '../../../src/ui/tables/list-edit.ts';
import { CurtailmentsTable } from './curtailments-table.tsx';

export interface FloorPlanFieldsProps {
  readonly plan: FloorPlan;
  readonly path: readonly PropertyKey[];
  readonly onChange: (plan: FloorPlan) => void;
}

const DAY_COUNT_WORDS: Readonly<Record<DayCount, string>> = {
  'actual/365': 'Actual days over 365',
  'actual/360': 'Actual days over 360',
  '30/360': 'Months of 30 days over 360',
  '30E/360': 'Months of 30 days over 360, European',
  '30E/360 ISDA': 'Months of 30 days over 360, ISDA',
  'actual/actual': 'Actual days over the year’s own',
};

/** The lender's terms. */
export function FloorPlanFields({ plan, path, onChange }: FloorPlanFieldsProps) {
  return (
    <div class="stack">
      <div class="fields">
        <RateInput
          label="Interest per year"
          value={plan.annualRatePpm}
          most={1000}
          required
          onCommit={(annualRatePpm = ppm(0)) => onChange({ ...plan, annualRatePpm })}
        />
        <ChoiceInput
          label="Day count"
          value={plan.dayCount}
          choices={DAY_COUNTS.map((count) => ({ value: count, label: DAY_COUNT_WORDS[count] }))}
          hint="As the agreement says"
          onCommit={(count) => {
            const dayCount = DAY_COUNTS.find((known) => known === count);
            if (dayCount !== undefined) onChange({ ...plan, dayCount });
          }}
        />
        <RateInput
          label="% of the price advanced"
          value={plan.advancePpm}
          required
          onCommit={(advancePpm = ppm(PPM)) => onChange({ ...plan, advancePpm })}
        />
        <MoneyInput
          label="Most on one car"
          value={plan.advanceCapCents}
          hint="Blank: no limit"
          onCommit={(cap) => onChange(withField(plan, 'advanceCapCents', cap))}
        />
        <MoneyInput
          label="Fee per car"
          value={plan.unitFeeCents}
          required
          onCommit={(unitFeeCents = ZERO) => onChange({ ...plan, unitFeeCents })}
        />
      </div>
      <CheckInput
        label="Buy fees are advanced too"
        value={plan.advanceOnFees}
        onCommit={(advanceOnFees) => onChange({ ...plan, advanceOnFees })}
      />
      <CurtailmentsTable
        curtailments={plan.curtailments}
        path={[...path, 'curtailments']}
        onChange={(curtailments) => onChange({ ...plan, curtailments })}
      />
    </div>
  );
}
