import type { LotAppraisal } from '../../../src/domain/appraisal/appraise.ts';
import type { LimitedBy } from '../../../src/domain/deal/max-bid.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { Risk } from '../../../src/domain/risk/risk-at.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { basisWords, rangeWords, whole } from '../retail/retail-words.ts';
import { oneIn } from '../risk/risk-words.ts';

interface WhyThisNumberProps {
  readonly sheet: Worksheet;
  readonly checks: LotAppraisal['checks'];
  readonly risk: Risk | undefined;
  readonly priceNow: Cents | undefined;
}

/** The number in sentences that a skeptical owner can check, and what was assumed. */
export function WhyThisNumber({ sheet, checks, risk, priceNow }: WhyThisNumberProps) {
  const { result, goOn, assumptions, deal, appraisal } = sheet;
  const { maxBid, breakdown, limitedBy } = result;
  const { retail } = appraisal;
  const check = checks[0];
  return (
    <section class="stack" aria-label="Why this number">
      {retail && (
        <p class="sentence">
          Expected retail is about <strong>{whole(deal.retail)}</strong>: {rangeWords(retail)}. {basisWords(retail)}
        </p>
      )}
      {maxBid === null ? (
        <p class="sentence">Don’t bid. Even at $0 {whyNone(sheet)}</p>
      ) : (
        <p class="sentence">
          Bought at <strong>{formatMoney(maxBid)}</strong> it costs {formatMoney(breakdown.allIn)} all in and leaves an
          expected {formatMoney(breakdown.profit)}
          {risk && <>, with a chance of losing money of {oneIn(risk.lossChance)}</>}. {LIMIT_WORDS[limitedBy]}
        </p>
      )}
      {check && (
        <p class="note">
          Check first: <strong>{lowerFirst(check.sentence)}</strong>
        </p>
      )}
      {priceNow !== undefined && maxBid !== null && goOn !== null && goOn > maxBid && limitedBy !== 'sealed' && (
        <p class="note">
          The price is over a fee step: from here you can go on to <strong>{formatMoney(goOn)}</strong> by hand.
        </p>
      )}
      {assumptions.length > 0 && (
        <p class="quiet small">Assumed: {assumptions.map((assumption) => lowerFirst(assumption.message)).join(' ')}</p>
      )}
    </section>
  );
}

/** The reason that is true: a car that would earn enough is refused by the limit on the chance of a loss, and only by it. */
function whyNone({ result: { breakdown, limitedBy } }: Worksheet): string {
  const profit = formatMoney(breakdown.profit);
  if (limitedBy === 'loss-chance') {
    return `the chance of losing money is over your limit, though the car would leave an expected ${profit}.`;
  }
  return `the car would leave ${profit}, and your minimum profit is ${formatMoney(breakdown.required)}.`;
}

const lowerFirst = (sentence: string): string => sentence.charAt(0).toLowerCase() + sentence.slice(1);

const LIMIT_WORDS: Record<LimitedBy, string> = {
  'least-dollars': 'One increment higher it would earn less than your minimum profit in dollars.',
  'least-share': 'One increment higher it would earn less than your minimum % of retail.',
  'least-return': 'One increment higher it would earn less than your minimum return on own cash.',
  'loss-chance': 'One increment higher the chance of losing money would be over your limit.',
  sealed:
    'The sale is sealed and you pay what you bid, so the max bid is where the chance of winning times the profit is largest. A fee that rises only at lower prices can move it up.',
  'nothing-pays': '',
};
