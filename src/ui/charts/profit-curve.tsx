import { ticks } from 'd3-array';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { useWidth } from '../hooks/use-width.ts';
import { type LossPoint, LossStrip } from './loss-strip.tsx';
import './profit-curve.css';

export interface CurvePoint {
  readonly price: Cents;
  readonly profit: Cents;
  readonly required: Cents;
}

export interface ProfitCurveProps {
  /** In order of price; where a fee jumps, the last price before and the first after are both there. */
  readonly points: readonly CurvePoint[];
  /** Prices at which the fee steps, drawn as drops. */
  readonly cliffs: readonly Cents[];
  readonly accepted: readonly { readonly low: Cents; readonly high: Cents }[];
  readonly maxBid: Cents | null;
  readonly priceNow?: Cents | undefined;
  readonly caption: string;
  /** Chance of losing money, 0 to 1, in order of price; drawn under the profit. */
  readonly chances?: readonly LossPoint[];
  /** The highest chance that is wanted. */
  readonly limit?: number;
}

const HEIGHT = 240;
const MARGIN = { top: 22, right: 12, bottom: 28, left: 62 };

/** Expected profit against hammer price: it falls a dollar a dollar, and drops where a fee steps. */
export function ProfitCurve(props: ProfitCurveProps) {
  const { points, cliffs, accepted, maxBid, priceNow, caption, chances = [], limit } = props;
  const [ref, width] = useWidth<HTMLElement>(560);
  const first = points[0];
  const last = points[points.length - 1];
  if (first === undefined || last === undefined || first.price === last.price) return null;

  const low = Math.min(0, ...points.map((p) => p.profit));
  const high = Math.max(...points.map((p) => Math.max(p.profit, p.required)));
  const x = (price: number) =>
    MARGIN.left + ((price - first.price) / (last.price - first.price)) * (width - MARGIN.left - MARGIN.right);
  const y = (profit: number) =>
    HEIGHT - MARGIN.bottom - ((profit - low) / (high - low || 1)) * (HEIGHT - MARGIN.top - MARGIN.bottom);
  const path = (of: (p: CurvePoint) => number) =>
    points.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p.price).toFixed(1)} ${y(of(p)).toFixed(1)}`).join('');
  const within = (price: number) => price >= first.price && price <= last.price;
  const floor = HEIGHT - MARGIN.bottom;
  const [nowAnchor, stopAnchor] = anchors(priceNow === undefined || maxBid === null ? null : x(maxBid) - x(priceNow));

  return (
    <figure class="curve" ref={ref}>
      <svg width={width} height={HEIGHT} role="img" aria-label={caption}>
        {accepted.map((span) => (
          <rect
            key={span.low}
            class="curve-accepted"
            x={x(Math.max(first.price, span.low))}
            y={MARGIN.top}
            width={Math.max(1, x(Math.min(last.price, span.high)) - x(Math.max(first.price, span.low)))}
            height={floor - MARGIN.top}
          />
        ))}
        {ticks(low / 100, high / 100, 4).map((dollars) => (
          <g key={dollars}>
            <line
              class="curve-grid"
              x1={MARGIN.left}
              x2={width - MARGIN.right}
              y1={y(dollars * 100)}
              y2={y(dollars * 100)}
            />
            <text class="curve-tick" x={MARGIN.left - 6} y={y(dollars * 100)} dy="0.32em" text-anchor="end">
              {formatMoney(Math.round(dollars * 100) as Cents)}
            </text>
          </g>
        ))}
        {ticks(first.price / 100, last.price / 100, Math.max(2, Math.floor(width / 130))).map((dollars) => (
          <text key={dollars} class="curve-tick" x={x(dollars * 100)} y={HEIGHT - 8} text-anchor="middle">
            {formatMoney(Math.round(dollars * 100) as Cents)}
          </text>
        ))}
        <line class="curve-zero" x1={MARGIN.left} x2={width - MARGIN.right} y1={y(0)} y2={y(0)} />
        {cliffs.filter(within).map((price) => (
          <line key={price} class="curve-cliff" x1={x(price)} x2={x(price)} y1={MARGIN.top} y2={floor} />
        ))}
        <path class="curve-required" d={path((p) => p.required)} />
        <path class="curve-profit" d={path((p) => p.profit)} />
        {priceNow !== undefined && within(priceNow) && (
          <g>
            <line class="curve-now" x1={x(priceNow)} x2={x(priceNow)} y1={MARGIN.top} y2={floor} />
            <text class="curve-mark" x={x(priceNow)} y={14} text-anchor={nowAnchor}>
              now
            </text>
          </g>
        )}
        {maxBid !== null && within(maxBid) && (
          <g>
            <line class="curve-stop" x1={x(maxBid)} x2={x(maxBid)} y1={MARGIN.top} y2={floor} />
            <text class="curve-mark stop" x={x(maxBid)} y={14} text-anchor={stopAnchor}>
              stop {formatMoney(maxBid)}
            </text>
          </g>
        )}
      </svg>
      {chances.length > 0 && (
        <LossStrip
          chances={chances}
          limit={limit}
          x={x}
          left={MARGIN.left}
          right={MARGIN.right}
          width={width}
          stop={maxBid}
        />
      )}
      <figcaption class="small quiet">{caption}</figcaption>
    </figure>
  );
}

/** Two names that would run into each other go to their own sides. */
function anchors(apart: number | null): readonly ['start' | 'middle' | 'end', 'start' | 'middle' | 'end'] {
  if (apart === null || Math.abs(apart) > 80) return ['middle', 'middle'];
  return apart >= 0 ? ['end', 'start'] : ['start', 'end'];
}
