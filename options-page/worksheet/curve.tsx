import { useMemo } from 'preact/hooks';
import type { Deal } from '../../src/domain/bid/deal.ts';
import type { MaxBid } from '../../src/domain/bid/max-bid.ts';
import { profitPoints } from '../../src/domain/bid/profit-points.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { ProfitCurve } from '../../src/ui/profit-curve.tsx';

interface CurveProps {
  readonly deal: Deal;
  readonly result: MaxBid;
  readonly priceNow: Cents | undefined;
}

/** Expected profit against the hammer price, around the place where the answer lies. */
export function Curve({ deal, result, priceNow }: CurveProps) {
  const { maxBid } = result;
  const points = useMemo(() => {
    const middle = maxBid ?? 0;
    const low = Math.min(Math.floor(middle * 0.7), priceNow ?? middle);
    const high = Math.max(Math.ceil(middle * 1.2), Math.ceil((priceNow ?? 0) * 1.05), 100_000);
    return profitPoints(deal, cents(low), cents(high), 120);
  }, [deal, maxBid, priceNow]);
  const stop =
    maxBid === null ? 'No price pays.' : `It meets the least profit, the dashed line, up to ${formatMoney(maxBid)}.`;
  return (
    <section class="stack">
      <h2>Profit against price</h2>
      <ProfitCurve
        points={points}
        cliffs={result.cliffs.map(({ at }) => at)}
        accepted={result.accepted}
        maxBid={maxBid}
        priceNow={priceNow}
        caption={`Expected profit falls as the hammer price rises, and drops where a fee steps up (dotted). ${stop}`}
      />
    </section>
  );
}
