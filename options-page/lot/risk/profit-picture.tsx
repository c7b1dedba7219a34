import { useMemo } from 'preact/hooks';
import { profitPoints } from '../../../src/domain/deal/profit-points.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { PPM, type Ppm } from '../../../src/domain/money/rate.ts';
import { lossChances } from '../../../src/domain/risk/risk-at.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { ProfitCurve } from '../../../src/ui/charts/profit-curve.tsx';

interface ProfitPictureProps {
  readonly sheet: Worksheet;
  readonly priceNow: Cents | undefined;
  readonly limit: Ppm;
}

/** How many prices the chance of a loss is worked out for: each is a sum over hundreds of cases. */
const CHANCES = 32;

/** Expected profit against the hammer price, and under it the chance of losing money. */
export function ProfitPicture({ sheet, priceNow, limit }: ProfitPictureProps) {
  const { deal, result, appraisal } = sheet;
  const { maxBid, limitedBy } = result;
  const { low, high } = useMemo(() => {
    const middle = maxBid ?? 0;
    return {
      low: cents(Math.min(Math.floor(middle * 0.7), priceNow ?? middle)),
      high: cents(Math.max(Math.ceil(middle * 1.2), Math.ceil((priceNow ?? 0) * 1.05), 100_000)),
    };
  }, [maxBid, priceNow]);
  const points = useMemo(() => profitPoints(deal, low, high, 120), [deal, low, high]);
  const chances = useMemo(() => {
    if (appraisal.risk === undefined) return [];
    const chanceAt = lossChances(deal, appraisal.risk);
    return Array.from({ length: CHANCES + 1 }, (_, i) => {
      const price = cents(Math.round(low + ((high - low) * i) / CHANCES));
      return { price, chance: chanceAt(price) };
    });
  }, [deal, appraisal.risk, low, high]);
  const held = limitedBy === 'loss-chance' ? 'Your limit on the chance of a loss' : undefined;
  const stop =
    maxBid === null
      ? held === undefined
        ? 'Don’t bid.'
        : `Don’t bid. ${held} refuses every price.`
      : held === undefined
        ? `It meets the minimum profit, the dashed line, up to ${formatMoney(maxBid)}.`
        : `${held} stops it at ${formatMoney(maxBid)}, before the minimum profit, the dashed line, does.`;
  return (
    <ProfitCurve
      points={points}
      cliffs={result.cliffs.map(({ at }) => at)}
      accepted={result.accepted}
      maxBid={maxBid}
      priceNow={priceNow}
      chances={chances}
      {...(limit < PPM ? { limit: limit / PPM } : {})}
      caption={`Expected profit falls as the hammer price rises, and drops where a fee steps up (dotted). ${stop} Below it, the chance of losing money at each price.`}
    />
  );
}
