import type { MaxBid } from '../deal/max-bid.ts';
import type { Line } from '../deal/price-breakdown.ts';
import { type Cents, cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { Worksheet } from './worksheet-of.ts';

/** The whole way from what the car would bring down to the price to stop at: `from` less all `steps` is exactly `to`. */
export interface Walk {
  readonly from: Line;
  readonly steps: readonly Line[];
  readonly to: Cents;
}

/**
 * The breakdown at the max bid, with the ceiling as a step of its own where one holds retail down, and with what is left
 * over named for what keeps it: the sale's steps, the limit on the chance of a loss, or a sealed sale.
 */
export function walkOf({
  result,
  appraisal,
  uncorrected,
}: Pick<Worksheet, 'result' | 'appraisal' | 'uncorrected'>): Walk {
  const { retail } = uncorrected?.appraisal ?? appraisal;
  const breakdown = uncorrected?.breakdown ?? result.breakdown;
  const steps = [
    ...breakdown.steps.filter(({ group }) => group !== 'slack'),
    ...(uncorrected?.steps ?? []).filter((line) => line.cents !== 0),
    ...result.breakdown.steps
      .filter(({ group, cents: amount }) => group === 'slack' && amount !== 0)
      .map((line) => keptBack(line, result)),
  ];
  const off = retail === undefined ? 0 : retail.uncapped - retail.mean;
  const lowest = retail?.ceilings.find((one) => one.lowest);
  if (retail === undefined || off === 0 || lowest === undefined) {
    // Elsewhere the worksheet tells retail as corrected; the two figures must not pass for one.
    const isOther = breakdown.retail.cents !== result.breakdown.retail.cents;
    const from = isOther ? { ...breakdown.retail, label: 'Retail before corrections' } : breakdown.retail;
    return { from, steps, to: breakdown.price };
  }
  const label = `Capped by a substitute: ${lowest.ceiling.label}, ${formatMoney(lowest.cap, { cents: 'never' })}`;
  return {
    from: {
      ...breakdown.retail,
      label: 'Retail before the cap',
      cents: retail.uncapped,
      range: retail.uncappedRange,
    },
    steps: [{ key: 'ceiling', group: 'ceiling', label, cents: cents(off) }, ...steps],
    to: breakdown.price,
  };
}

function keptBack(line: Line, { limitedBy }: MaxBid): Line {
  if (limitedBy === 'loss-chance') return { ...line, group: 'risk-cap', label: 'Held back for the chance of a loss' };
  if (limitedBy === 'sealed') return { ...line, group: 'sealed', label: 'Held back because the bid is sealed' };
  return line;
}
