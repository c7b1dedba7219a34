import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Plan } from '../../src/domain/plan/plan.ts';
import type { KeptPlan } from '../../src/views/plan/kept-plan.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { Fact } from './purse-head.tsx';

/** What the plan is likely to come to, and what would change it. */
export function PlanFigures({ kept }: { kept: KeptPlan }) {
  const { plan, purse } = kept;
  const last = plan.fan.at(-1);
  return (
    <div class="plan-figures">
      <Fact term="plan-profit" label="Expected profit" figure={about(plan.profit)}>
        on average, if prices run as your closings say; no plan does better than {about(plan.bounds.high)}
      </Fact>
      <Fact term="cars-expected" label="Cars expected" figure={plan.cars.toFixed(1)}>
        {last === undefined
          ? ''
          : `cash left at the end ${about(last.cash.likely)}; one time in ten ${last.cash.worst < 100_000 ? 'almost none' : `below ${about(last.cash.worst)}`}`}
      </Fact>
      <Fact term="worth-of-cash" label="One more $1,000 is worth" figure={about(plan.worthOfThousand)}>
        {plan.worthOfThousand === 0 ? 'the cash is not short' : 'in this purse’s time'}
      </Fact>
      {purse.entry.places !== undefined && (
        <Fact term="worth-of-place" label="One more place is worth" figure={about(plan.worthOfPlace)}>
          {plan.worthOfPlace === 0 ? 'places are not short' : 'on your lot'}
        </Fact>
      )}
      <Fact term="prices-higher" label="If prices run 5% higher" figure={about(plan.ifPricesHigher)}>
        5% lower: {about(plan.ifPricesLower)}
      </Fact>
      <Fact term="price-level" label="Prices this weekend" figure={levelFigure(kept.level)}>
        {kept.level.closings === 0
          ? 'no closing of this week yet'
          : `against the usual, after ${countWords(kept.level.closings, 'closing', 'closings')}; may be off by ${Math.round(kept.level.sd * 100)}%`}
      </Fact>
    </div>
  );
}

function levelFigure({ mean, closings }: KeptPlan['level']): string {
  const percent = Math.round((Math.exp(mean) - 1) * 100);
  if (closings === 0 || percent === 0) return 'as usual';
  return `${Math.abs(percent)}% ${percent > 0 ? 'higher' : 'lower'}`;
}

/** Nobody knows it to the dollar. */
const about = (amount: Cents): string => formatMoney(cents(Math.round(amount / 1000) * 1000));

/** What the bids that are in could take if every one of them won. */
export function StandingNote({ standing }: Pick<Plan, 'standing'>) {
  if (standing.cars === 0) return null;
  const line = standing.line > 0 ? ` and ${about(standing.line)} of the line` : '';
  return (
    <p class="small quiet">
      If every bid that is in won: {standing.cars} {standing.cars === 1 ? 'car' : 'cars'} for {about(standing.cash)}
      {line}.
    </p>
  );
}
