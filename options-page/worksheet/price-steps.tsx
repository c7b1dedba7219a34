import type { MaxBid } from '../../src/domain/bid/max-bid.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';

/** The steps at which a fee jumps, and the prices above the max bid at which one may go on. */
export function PriceSteps({ result }: { result: MaxBid }) {
  const { cliffs, reEntries } = result;
  if (cliffs.length === 0 && reEntries.length === 0) return null;
  return (
    <section class="stack">
      <h2>Price steps worth knowing</h2>
      <ul class="plain-list">
        {cliffs.map((cliff) => (
          <li key={cliff.at}>
            The step from {formatMoney(cliff.before)} to {formatMoney(cliff.at)} costs {formatMoney(cliff.step)}
            {cliff.extraFee >= 0
              ? ` and ${formatMoney(cliff.extraFee)} more in fees.`
              : `, but the fees fall by ${formatMoney(cents(-cliff.extraFee))}.`}
          </li>
        ))}
        {reEntries.map((interval) => (
          <li key={interval.low}>{reEntrySentence(interval.low, interval.high)}</li>
        ))}
      </ul>
    </section>
  );
}

const reEntrySentence = (low: Cents, high: Cents) =>
  low === high
    ? `If the price has already reached ${formatMoney(low)}, that price pays again; nothing above it does.`
    : `If the price has already passed ${formatMoney(low)}, you may go on to ${formatMoney(high)}. Never as a proxy: it could stop in between.`;
