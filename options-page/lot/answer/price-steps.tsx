import type { MaxBid } from '../../../src/domain/deal/max-bid.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { Fold } from '../fold.tsx';

/** The steps at which a fee jumps, and the prices above the max bid at which one may go on. */
export function PriceSteps({ result }: { result: MaxBid }) {
  const { cliffs, reEntries } = result;
  const lines = [
    ...cliffs.map((cliff) => ({ key: `cliff-${cliff.at}`, words: cliffSentence(cliff) })),
    ...reEntries.map(({ low, high }) => ({ key: `again-${low}`, words: reEntrySentence(low, high) })),
  ];
  const [first, ...others] = lines;
  if (first === undefined) return null;
  return (
    <Fold
      id="steps"
      title="Fee steps"
      result={
        <>
          {first.words}
          {others.length > 0 && (
            <span class="quiet">
              And {others.length} more {others.length === 1 ? 'step' : 'steps'} to know.
            </span>
          )}
        </>
      }
    >
      {() => (
        <ul class="plain-list">
          {lines.map(({ key, words }) => (
            <li key={key}>{words}</li>
          ))}
        </ul>
      )}
    </Fold>
  );
}

const cliffSentence = ({ before, at, step, extraFee }: MaxBid['cliffs'][number]): string =>
  `Going from ${formatMoney(before)} to ${formatMoney(at)} costs ${formatMoney(step)}${
    extraFee >= 0
      ? ` and ${formatMoney(extraFee)} more in fees.`
      : `, but the fees fall by ${formatMoney(cents(-extraFee))}.`
  }`;

const reEntrySentence = (low: Cents, high: Cents): string =>
  low === high
    ? `If the price has already reached ${formatMoney(low)}, that price works again. Nothing above it does.`
    : `If the price is already over ${formatMoney(low)}, you can go on to ${formatMoney(high)}. Never as a proxy: it could stop in between.`;
