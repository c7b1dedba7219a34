import { ticks } from 'd3-array';
import { feePoints } from '../../../src/domain/fees/fee-points.ts';
import type { Charge, FeeTable } from '../../../src/domain/fees/fee-schedule.ts';
import { totalFees } from '../../../src/domain/fees/fees-at.ts';
import { type Cents, cents, sumCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { useWidth } from '../../../src/ui/hooks/use-width.ts';

export interface FeePictureProps {
  readonly tables: readonly FeeTable[];
  readonly charges: readonly Charge[];
  /** The price that is being tried, marked on the line. */
  readonly price: Cents;
}

const HEIGHT = 180;
const MARGIN = { top: 20, right: 30, bottom: 24, left: 56 };
const LEAST_WIDTH = cents(2_000_000);

/** The fees in all against the hammer price: level, sloping, and upright where a band starts. */
export function FeePicture({ tables, charges, price }: FeePictureProps) {
  const [ref, width] = useWidth<HTMLElement>(420);
  const lastEdge = Math.max(0, ...tables.flatMap(({ bands }) => bands.map((band) => band.fromCents)));
  const highest = cents(Math.round(Math.max(LEAST_WIDTH, lastEdge * 1.3, price * 1.1)));
  const fixed = sumCents(charges.map((charge) => charge.cents));
  const points = feePoints(tables, highest).map((point) => ({ price: point.price, fee: point.fee + fixed }));
  const top = Math.max(100, ...points.map((point) => point.fee));
  const x = (at: number) => MARGIN.left + (at / highest) * (width - MARGIN.left - MARGIN.right);
  const y = (fee: number) => HEIGHT - MARGIN.bottom - (fee / top) * (HEIGHT - MARGIN.top - MARGIN.bottom);
  const path = points
    .map((point, i) => `${i === 0 ? 'M' : 'L'}${x(point.price).toFixed(1)} ${y(point.fee).toFixed(1)}`)
    .join('');
  const tried = totalFees(price, tables) + fixed;
  const caption = `Fees from $0 to ${formatMoney(highest, { cents: 'never' })}, with the test price marked`;
  return (
    <figure class="fee-picture" ref={ref}>
      <svg width={width} height={HEIGHT} role="img" aria-label={caption}>
        {ticks(0, top / 100, 3).map((dollars) => (
          <g key={dollars}>
            <line
              class="fee-grid"
              x1={MARGIN.left}
              x2={width - MARGIN.right}
              y1={y(dollars * 100)}
              y2={y(dollars * 100)}
            />
            <text class="fee-tick" x={MARGIN.left - 6} y={y(dollars * 100)} dy="0.32em" text-anchor="end">
              {formatMoney(cents(Math.round(dollars * 100)))}
            </text>
          </g>
        ))}
        {ticks(0, highest / 100, Math.max(2, Math.floor(width / 110))).map((dollars) => (
          <text key={dollars} class="fee-tick" x={x(dollars * 100)} y={HEIGHT - 6} text-anchor="middle">
            {formatMoney(cents(Math.round(dollars * 100)))}
          </text>
        ))}
        <path class="fee-line" d={path} />
        <line class="fee-tried" x1={x(price)} x2={x(price)} y1={y(0)} y2={y(tried)} />
        <circle class="fee-dot" cx={x(price)} cy={y(tried)} r={4} />
      </svg>
      <figcaption class="small quiet">{caption}</figcaption>
    </figure>
  );
}
