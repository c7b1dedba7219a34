import type { Carrying } from '../../../src/domain/carrying/carrying-rules.ts';
import type { StockCar } from '../../../src/domain/carrying/days-to-sell.ts';
import { holdFactors } from '../../../src/domain/carrying/hold-factors.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { factorOf } from '../../../src/domain/money/rounding.ts';
import { TermLink } from '../../../src/ui/term-link.tsx';

const TEN_THOUSAND = cents(1_000_000);

/** What the terms above come to, in the two figures that every max bid uses. */
export function HoldResult({ carrying, history }: { carrying: Carrying; history: readonly StockCar[] }) {
  const hold = holdFactors(carrying, { history });
  const days = Number(hold.expectedDays.toFixed(1)).toLocaleString('en-US');
  return (
    <section class="panel stack" aria-live="polite">
      <h2>Result</h2>
      <dl class="setup-facts">
        <div>
          <dt>
            <TermLink term="days-to-sell">Expected days to sell</TermLink>
          </dt>
          <dd class="figure">{days}</dd>
        </div>
        <div>
          <dt>
            <TermLink term="own-cash">On $10,000 of own cash</TermLink>
          </dt>
          <dd class="figure">{formatMoney(factorOf(TEN_THOUSAND, hold.cashFactor))}</dd>
        </div>
        {carrying.floorPlan && (
          <div>
            <dt>
              <TermLink term="interest">On $10,000 advanced</TermLink>
            </dt>
            <dd class="figure">{formatMoney(factorOf(TEN_THOUSAND, hold.floorFactor))}</dd>
          </div>
        )}
        <div>
          <dt>
            <TermLink term="interest">Plus, on every car</TermLink>
          </dt>
          <dd class="figure">{formatMoney(hold.flatHold)}</dd>
        </div>
      </dl>
      <p class="quiet small setup-prose">
        {carrying.daysToSell.kind === 'median'
          ? 'The expected days are more than the median, because slow sellers sit until the day they are wholesaled. '
          : ''}
        {carrying.floorPlan
          ? 'Curtailments are charged at the cost of own cash from that day on.'
          : 'Without a floor plan, every dollar is your own cash.'}
      </p>
    </section>
  );
}
