import type { Cents } from '../../domain/money/cents.ts';

export interface LossPoint {
  readonly price: Cents;
  readonly chance: number;
}

interface LossStripProps {
  readonly chances: readonly LossPoint[];
  readonly limit: number | undefined;
  /** The scale of the picture above, so that both read down one line. */
  readonly x: (price: number) => number;
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly stop: Cents | null;
}

const HEIGHT = 92;
const TOP = 8;
const BOTTOM = 8;

/** The chance of losing money at each price, under the profit at the same price. */
export function LossStrip({ chances, limit, x, left, right, width, stop }: LossStripProps) {
  const most = Math.min(1, Math.max(0.1, limit ?? 0, ...chances.map(({ chance }) => chance)));
  const y = (chance: number) => HEIGHT - BOTTOM - (chance / most) * (HEIGHT - TOP - BOTTOM);
  const line = chances
    .map(({ price, chance }, i) => `${i === 0 ? 'M' : 'L'}${x(price).toFixed(1)} ${y(chance).toFixed(1)}`)
    .join('');
  const first = chances[0]?.price ?? 0;
  const last = chances.at(-1)?.price ?? 0;
  const area = `${line}L${x(last).toFixed(1)} ${y(0)}L${x(first).toFixed(1)} ${y(0)}Z`;
  // The figures beside the strip must not run into each other.
  const marks = [0, most].filter((mark) => limit === undefined || Math.abs(y(mark) - y(limit)) > 14 || mark === limit);
  return (
    <svg width={width} height={HEIGHT} aria-hidden="true">
      <path class="curve-loss" d={area} />
      <path class="curve-loss-line" d={line} />
      <line class="curve-zero" x1={left} x2={width - right} y1={y(0)} y2={y(0)} />
      {[...new Set([...marks, ...(limit === undefined ? [] : [limit])])].map((mark) => (
        <text key={mark} class="curve-tick" x={left - 6} y={y(mark)} dy="0.32em" text-anchor="end">
          {Math.round(mark * 100)}%
        </text>
      ))}
      {limit !== undefined && <line class="curve-required" x1={left} x2={width - right} y1={y(limit)} y2={y(limit)} />}
      {stop !== null && stop >= first && stop <= last && (
        <line class="curve-stop" x1={x(stop)} x2={x(stop)} y1={0} y2={y(0)} />
      )}
      <text class="curve-tick" x={left + 6} y={TOP + 8}>
        chance of losing money
      </text>
    </svg>
  );
}
