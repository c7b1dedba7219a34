import { useRef } from 'preact/hooks';
import type { Carrying, FloorPlan } from '../../../src/domain/carrying/carrying-rules.ts';
import { stockOf } from '../../../src/domain/carrying/stock-record.ts';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { DaysFields } from './days-fields.tsx';
import { FloorPlanFields } from './floor-plan-fields.tsx';
import { HoldResult } from './hold-result.tsx';
import { OwnCars } from './own-cars.tsx';

/** An invented line to start from; the lender's own terms replace it. */
const FIRST_PLAN: FloorPlan = {
  annualRatePpm: ppm(90_000),
  dayCount: 'actual/365',
  advancePpm: ppm(PPM),
  advanceOnFees: false,
  unitFeeCents: ZERO,
  curtailments: [],
};

/** How long a car sits, and what the money in it costs meanwhile. */
export function HoldingPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { carrying } = setup;
  // Turned off and on again, the plan comes back as it was.
  const lastPlan = useRef(carrying.floorPlan ?? FIRST_PLAN);
  if (carrying.floorPlan !== undefined) lastPlan.current = carrying.floorPlan;
  const commit = (set: Partial<Carrying>, said: string) => change({ carrying: { ...carrying, ...set } }, said);
  const switchPlan = (on: boolean) => {
    const { floorPlan: _old, ...cashOnly } = carrying;
    change(
      { carrying: on ? { ...cashOnly, floorPlan: lastPlan.current } : cashOnly },
      on ? 'Floor plan on.' : 'Floor plan off: every car is paid from cash.',
    );
  };
  return (
    <PartFrame
      part={part}
      intro="Money is tied up in a car until it sells. A max bid counts what that costs for the usual time to sell."
      caution="The lender sets the floor plan’s terms. Use the agreement and the statements, and ask an accountant how to book it."
    >
      <DaysFields carrying={carrying} onChange={commit} />
      <OwnCars />
      <fieldset class="stack">
        <legend>Own cash and lot space</legend>
        <div class="fields">
          <RateInput
            label="Cost of own cash, per year"
            value={carrying.cashAnnualRatePpm}
            most={1000}
            required
            hint="What it would earn elsewhere, or cost to borrow"
            onCommit={(cashAnnualRatePpm = ppm(0)) => commit({ cashAnnualRatePpm }, 'Cost of own cash saved.')}
          />
          <MoneyInput
            label="Lot space, per day"
            value={carrying.lotCentsPerDay}
            required
            hint="Rent, insurance, washing, for one car"
            onCommit={(lotCentsPerDay = ZERO) =>
              commit({ lotCentsPerDay }, `Lot space: ${formatMoney(lotCentsPerDay)} a day.`)
            }
          />
        </div>
      </fieldset>
      <fieldset class="stack">
        <legend>Floor plan</legend>
        <CheckInput
          label="A lender pays for cars until they sell"
          value={carrying.floorPlan !== undefined}
          onCommit={switchPlan}
        />
        {carrying.floorPlan && (
          <FloorPlanFields
            plan={carrying.floorPlan}
            path={['carrying', 'floorPlan']}
            onChange={(floorPlan) => commit({ floorPlan }, 'Floor plan saved.')}
          />
        )}
      </fieldset>
      <HoldResult carrying={carrying} history={stockOf(setup)} />
    </PartFrame>
  );
}
