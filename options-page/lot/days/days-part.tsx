import type { LotAppraisal } from '../../../src/domain/appraisal/appraise.ts';
import { type DaysAnswer, daysAnswer } from '../../../src/domain/carrying/days-answer.ts';
import { FEWEST_SALES_TO_SHOW } from '../../../src/domain/carrying/kaplan-meier.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { PricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { SurvivalCurve } from '../../../src/ui/charts/survival-curve.tsx';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { Fold } from '../fold.tsx';

export interface DaysPartProps {
  readonly context: PricingContext;
  readonly sheet: Worksheet;
  readonly appraisal: LotAppraisal;
}

/** How long it will stand, what that rests on, and what holding it costs meanwhile. */
export function DaysPart({ context, sheet, appraisal }: DaysPartProps) {
  const { carrying } = context.setup;
  const { deal, result } = sheet;
  const answer = daysAnswer(carrying, context.history, appraisal.stretch);
  const { expectedDays } = (appraisal.hold ?? context.hold)(deal.funding.kind);
  const holding = result.breakdown.steps.filter(({ group }) => HOLDING.has(group));
  const cost = cents(holding.reduce((sum, line) => sum + line.cents, 0));
  return (
    <Fold
      id="days"
      title="Days to sell"
      result={
        <>
          <strong>{Math.round(expectedDays)} days</strong> expected, costing {formatMoney(cost, { cents: 'never' })}
          <span class="quiet">{restsOn(answer, appraisal.stretch)}</span>
        </>
      }
    >
      {() => (
        <>
          {answer && (
            <SurvivalCurve
              believed={answer.survives}
              steps={appraisal.stretch === 1 ? answer.steps : []}
              horizon={carrying.horizonDays}
              median={answer.median}
              caption={captionOf(answer, appraisal.stretch)}
            />
          )}
          {holding.length > 0 && (
            <Ledger
              caption="What holding it costs"
              rows={holding}
              rowKey={({ key }) => key}
              columns={[
                { label: '', cell: ({ label }) => label },
                { label: '', number: true, cell: (line) => formatMoney(line.cents) },
              ]}
            />
          )}
          <p class="quiet small">
            A car still there on day {carrying.horizonDays} is counted as wholesaled that day. Days, terms and your own
            cars are in <a href="#/setup/holding">Setup › Holding</a>.
          </p>
        </>
      )}
    </Fold>
  );
}

const HOLDING: ReadonlySet<string> = new Set(['interest', 'own-cash', 'holding']);

function restsOn(answer: DaysAnswer | undefined, stretch: number): string {
  const longer = stretch === 1 ? '' : ` Similar cars in stock make it ${Math.round((stretch - 1) * 100)}% longer.`;
  if (answer === undefined) return `A fixed number of days, set in Setup.${longer}`;
  const { sold, unsold } = answer;
  if (sold + unsold === 0) return `Your own answer in Setup. None of your own cars is recorded yet.${longer}`;
  return `Your own answer and ${sold + unsold} of your cars, ${unsold} of them unsold.${longer}`;
}

function captionOf({ steps, sold }: DaysAnswer, stretch: number): string {
  const line = 'The dashed line is the share of cars expected to still be unsold.';
  if (stretch !== 1) return `${line} It is longer because similar cars are in stock.`;
  if (steps.length > 0)
    return `${line} The steps are your own cars, with unsold ones counted up to today (Kaplan–Meier), and their 95% range.`;
  return `${line} ${sold === 0 ? 'None' : `Only ${sold}`} of your own cars ${sold === 1 ? 'has' : 'have'} sold; with ${FEWEST_SALES_TO_SHOW} or more, they are drawn beside it.`;
}
