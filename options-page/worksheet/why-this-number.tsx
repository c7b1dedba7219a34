import type { LimitedBy } from '../../src/domain/bid/max-bid.ts';
import type { Worksheet } from '../../src/domain/bid/worksheet-of.ts';
import type { Cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';

interface WhyThisNumberProps {
  readonly sheet: Worksheet;
  readonly priceNow: Cents | undefined;
}

/** The number in a sentence that a sceptical owner can check, and what was taken for granted on the way. */
export function WhyThisNumber({ sheet, priceNow }: WhyThisNumberProps) {
  const { result, goOn, assumptions } = sheet;
  const { maxBid, breakdown, limitedBy } = result;
  return (
    <section class="stack" aria-label="Why this number">
      {maxBid === null ? (
        <p class="sentence">
          No price pays. Even at nothing the car would leave {formatMoney(breakdown.profit)}, and your least profit is{' '}
          {formatMoney(breakdown.required)}.
        </p>
      ) : (
        <p class="sentence">
          At a hammer price of <strong>{formatMoney(maxBid)}</strong> it costs {formatMoney(breakdown.allIn)} all in and
          leaves an expected {formatMoney(breakdown.profit)} of profit. {LIMIT_WORDS[limitedBy]}
        </p>
      )}
      {priceNow !== undefined && maxBid !== null && goOn !== null && goOn > maxBid && (
        <p class="note">
          The price is past a fee step: from here you may go on to <strong>{formatMoney(goOn)}</strong> by hand.
        </p>
      )}
      {breakdown.financed > 0 ? (
        <p class="quiet">
          The floor plan carries {formatMoney(breakdown.financed)}; it ties up {formatMoney(breakdown.cash)} of your own
          cash, recon counted.
        </p>
      ) : (
        maxBid !== null && (
          <p class="quiet">It ties up {formatMoney(breakdown.cash)} of your own cash, recon counted.</p>
        )
      )}
      {assumptions.length > 0 && (
        <ul class="plain-list quiet small">
          {assumptions.map((assumption) => (
            <li key={assumption.about}>{assumption.message}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

const LIMIT_WORDS: Record<LimitedBy, string> = {
  'least-dollars': 'One step higher it would earn less than your least profit in dollars.',
  'least-share': 'One step higher it would earn less than your share of retail.',
  'least-return': 'One step higher it would earn less on the cash it ties up than you ask for.',
  'loss-chance': 'One step higher the chance of losing money would be above your limit.',
  'nothing-pays': '',
};
