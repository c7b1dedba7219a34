import { useMemo } from 'preact/hooks';
import { maxBidOnly } from '../../../src/domain/deal/max-bid.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { PPM } from '../../../src/domain/money/rate.ts';
import type { Risk } from '../../../src/domain/risk/risk-at.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { TermLink } from '../../../src/ui/term-link.tsx';
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
          <span class="missing">{noRiskWords(result)}</span>
        ) : (
          <>
            Loses money <strong>{oneIn(risk.lossChance)}</strong> at that price
            <span class="quiet">Worst 1 in 10, on average {moneyWords(risk.worstTenth)}.</span>
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
                <dt>
                  <TermLink term="expected-profit">Expected profit</TermLink>
                </dt>
                <dd class="figure">{whole(result.breakdown.profit)}</dd>
              </div>
              <div>
                <dt>
                  <TermLink term="chance-of-loss">Chance of losing money</TermLink>
                </dt>
                <dd class="figure">{percentWords(risk.lossChance)}</dd>
              </div>
              <div>
                <dt>
                  <TermLink term="worst-tenth">1 in 10 ends below</TermLink>
                </dt>
                <dd class="figure">{whole(risk.oneInTen)}</dd>
              </div>
              <div>
                <dt>
                  <TermLink term="worst-tenth">Average of the worst 1 in 10</TermLink>
                </dt>
                <dd class="figure">{whole(risk.worstTenth)}</dd>
              </div>
            </dl>
          )}
          <p>
            {limit >= PPM ? (
              'No limit on the chance of a loss is set in Setup › Money rules.'
            ) : uncapped === undefined ? (
              <>
                Your limit is {percentWords(limit / PPM)}, from Setup › Money rules. Here the minimum profit stops it
                first.
              </>
            ) : (
              <>
                Your limit of {percentWords(limit / PPM)}{' '}
                {result.maxBid === null ? 'refuses every price' : 'lowers the max bid'}. The profit rule alone would go
                to {uncapped === null ? 'nothing' : formatMoney(uncapped)}.
              </>
            )}
          </p>
          <p class="quiet small">
            Retail, each recon line, each doubt, the days to sell and a canceled sale all vary at once and are added up
            exactly, so the same inputs always give the same figure. Estimates can be wrong, and money can be lost.
          </p>
        </>
      )}
    </Fold>
  );
}

/** Why there is no chance of a loss to show. */
function noRiskWords({ maxBid, limitedBy }: Worksheet['result']): string {
  if (maxBid !== null) return 'Can’t be worked out';
  return limitedBy === 'loss-chance' ? 'Don’t bid: the chance of losing money is over your limit' : 'Don’t bid';
}

/** A loss in words as well as in sign. */
const moneyWords = (amount: Cents): string =>
  amount < 0 ? `a loss of ${whole(cents(-amount))}` : `a profit of ${whole(amount)}`;
