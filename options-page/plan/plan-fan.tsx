import { max, min, ticks } from 'd3-array';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { FanPoint } from '../../src/domain/plan/plan.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { useWidth } from '../../src/ui/hooks/use-width.ts';
import './plan-fan.css';

interface PlanFanProps {
  /** Cash before the first close. */
  readonly start: Cents;
  readonly fan: readonly FanPoint[];
  readonly zone: Zone;
}

const HEIGHT = 220;
const MARGIN = { top: 12, right: 12, bottom: 34, left: 64 };

/** The cash as the lots close, one after the other: the likely amount as a line, nine times in ten between the soft edges. */
export function PlanFan({ start, fan, zone }: PlanFanProps) {
  const [ref, width] = useWidth<HTMLElement>(560);
  const last = fan.at(-1);
  if (last === undefined) return null;
  const points = [{ cash: { worst: start, likely: start, best: start } }, ...fan];
  const low = Math.min(0, min(points, ({ cash }) => cash.worst) ?? 0);
  const high = Math.max(1, max(points, ({ cash }) => cash.best) ?? 1);
  const x = (i: number) => MARGIN.left + (i / (points.length - 1)) * (width - MARGIN.left - MARGIN.right);
  const y = (amount: number) =>
    HEIGHT - MARGIN.bottom - ((amount - low) / (high - low)) * (HEIGHT - MARGIN.top - MARGIN.bottom);
  const line = (of: (cash: FanPoint['cash']) => number) =>
    points.map(({ cash }, i) => `${i === 0 ? 'M' : 'L'}${x(i).toFixed(1)} ${y(of(cash)).toFixed(1)}`).join('');
  const back = points
    .map(({ cash }, i) => `L${x(i).toFixed(1)} ${y(cash.worst).toFixed(1)}`)
    .reverse()
    .join('');
  const caption = `Cash to bid with, lot by lot until ${sayTime(last.at, zone)}: from ${formatMoney(start)} to ${dollars(last.cash.likely)} likely, between ${dollars(last.cash.worst)} and ${dollars(last.cash.best)} eight times in ten. ${last.cars.toFixed(1)} cars expected.`;
  return (
    <figure class="plan-fan" ref={ref}>
      <svg width={width} height={HEIGHT} role="img" aria-label={caption}>
        {ticks(low, high, 4).map((amount) => (
          <g key={amount}>
            <line class="plan-fan-grid" x1={MARGIN.left} x2={width - MARGIN.right} y1={y(amount)} y2={y(amount)} />
            <text class="plan-fan-tick" x={MARGIN.left - 6} y={y(amount)} dy="0.32em" text-anchor="end">
              {dollars(amount)}
            </text>
          </g>
        ))}
        <path class="plan-fan-band" d={`${line(({ best }) => best)}${back}Z`} />
        <path class="plan-fan-likely" d={line(({ likely }) => likely)} />
        <text class="plan-fan-tick" x={MARGIN.left} y={HEIGHT - 16}>
          now
        </text>
        <text class="plan-fan-tick" x={width - MARGIN.right} y={HEIGHT - 16} text-anchor="end">
          {sayTime(last.at, zone)}
        </text>
      </svg>
      <figcaption class="small quiet">{caption}</figcaption>
    </figure>
  );
}

const dollars = (amount: number) => formatMoney(cents(Math.round(amount / 100) * 100));
