import { useMemo } from 'preact/hooks';
import { maxBidOnly } from '../../../src/domain/deal/max-bid.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { PPM } from '../../../src/domain/money/rate.ts';
import type { Risk } from '../../../src/domain/risk/risk-at.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { Fold } from '../fold.tsx';
import { whole } from '../retail/retail-words.ts';
import { ProfitPicture } from './profit-picture.tsx';
import { oneIn, percentWords } from './risk-words.ts';

export interface RiskPartProps {
  readonly sheet: Worksheet;
  readonly risk: Risk | undefined;
  readonly priceNow: Cents | undefined;
}

/** How often it would lose money, how much in the bad cases, and what profit is left at every price. */
export function RiskPart({ sheet, risk, priceNow }: RiskPartProps) {
  const { setup } = useWorkspace();
  const { deal, result } = sheet;
  const limit = setup.rules.lossChancePpm;
  // Only a limit that binds is worth a sentence about what would be without it.
  const uncapped = useMemo(
    () => (result.limitedBy === 'loss-chance' ? maxBidOnly(deal) : undefined),
    [deal, result.limitedBy],
  );
  return (
    <Fold
      id="risk"
      title="Risk"
      result={
        risk === undefined ? (
          <span class="missing">no price pays</span>
        ) : (
          <>
            Loses money <strong>{oneIn(risk.lossChance)}</strong> at that price
            <span class="quiet">The worst 1 in 10 average {moneyWords(risk.worstTenth)}.</span>
          </>
        )
      }
    >
      {() => (
        <>
          <ProfitPicture sheet={sheet} priceNow={priceNow} limit={limit} />
          {risk && (
            <dl class="facts">
              <div>
                <dt>Expected profit</dt>
                <dd class="figure">{whole(result.breakdown.profit)}</dd>
              </div>
              <div>
                <dt>Chance of losing money</dt>
                <dd class="figure">{percentWords(risk.lossChance)}</dd>
              </div>
              <div>
                <dt>1 in 10 end below</dt>
                <dd class="figure">{whole(risk.oneInTen)}</dd>
              </div>
              <div>
                <dt>Those average</dt>
                <dd class="figure">{whole(risk.worstTenth)}</dd>
              </div>
            </dl>
          )}
          <p>
            {limit >= PPM ? (
              'No limit on the chance of a loss is set in Setup › Money rules.'
            ) : uncapped === undefined ? (
              <>
                Your limit is {percentWords(limit / PPM)}, from Setup › Money rules. It does not bind here: the least
                profit stops it first.
              </>
            ) : (
              <>
                Your limit of {percentWords(limit / PPM)} holds the max bid down. Without it the profit rule alone would
                go to {uncapped === null ? 'nothing' : formatMoney(uncapped)}.
              </>
            )}
          </p>
          <p class="quiet small">
            Retail, each recon line, each doubt, the days it stands and a sale that comes undone are all let vary at
            once, and added up exactly: the same inputs always give the same figure. Estimates can be wrong, and money
            can be lost.
          </p>
        </>
      )}
    </Fold>
  );
}

/** A loss in words as well as in sign. */
const moneyWords = (amount: Cents): string =>
  amount < 0 ? `a loss of ${whole(cents(-amount))}` : `a profit of ${whole(amount)}`;
