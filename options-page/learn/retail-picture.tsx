import { ticks } from 'd3-array';
import type { PastLot } from '../../src/domain/learn/happened.ts';
import { useWidth } from '../../src/ui/hooks/use-width.ts';

/** A car that was sold, its price and its range as shares of what was expected. */
export interface RetailDot {
  readonly lot: PastLot['lot'];
  readonly title: string;
  readonly low: number;
  readonly high: number;
  readonly actual: number;
}

const HEIGHT = 260;
const MARGIN = { top: 14, right: 12, bottom: 34, left: 48 };

/** Each sold car as a dot over the range that was forecast for it, the oldest sale first; what is outside is hollow. */
export function RetailPicture({ dots, caption }: { dots: readonly RetailDot[]; caption: string }) {
  const [ref, width] = useWidth<HTMLElement>(640);
  const all = dots.flatMap(({ low, high, actual }) => [low, high, actual]);
  const bottom = Math.floor(Math.min(0.85, ...all) * 20) / 20;
  const top = Math.ceil(Math.max(1.15, ...all) * 20) / 20;
  const step = (width - MARGIN.left - MARGIN.right) / Math.max(1, dots.length);
  const x = (i: number) => MARGIN.left + step * (i + 0.5);
  const y = (share: number) =>
    HEIGHT - MARGIN.bottom - ((share - bottom) / (top - bottom)) * (HEIGHT - MARGIN.top - MARGIN.bottom);
  const radius = Math.max(2.5, Math.min(5, step / 2.5));
  return (
    <figure class="learn-picture" ref={ref}>
      <svg width={width} height={HEIGHT} role="img" aria-label={caption}>
        {ticks(bottom, top, 5).map((share) => (
          <g key={share}>
            <line class="learn-grid" x1={MARGIN.left} x2={width - MARGIN.right} y1={y(share)} y2={y(share)} />
            <text class="learn-tick" x={MARGIN.left - 6} y={y(share)} dy="0.32em" text-anchor="end">
              {Math.round(share * 100)}%
            </text>
          </g>
        ))}
        <line class="learn-even" x1={MARGIN.left} x2={width - MARGIN.right} y1={y(1)} y2={y(1)} />
        {dots.map(({ lot, low, high, actual }, i) => {
          const inside = low <= actual && actual <= high;
          const wide = Math.max(3, Math.min(14, step * 0.6));
          return (
            <g key={lot}>
              <rect
                class="learn-range"
                x={x(i) - wide / 2}
                width={wide}
                y={y(high)}
                height={Math.max(1, y(low) - y(high))}
              />
              <circle class={inside ? 'learn-dot' : 'learn-dot outside'} cx={x(i)} cy={y(actual)} r={radius} />
            </g>
          );
        })}
        <text class="learn-tick" x={MARGIN.left} y={HEIGHT - 10}>
          oldest sale
        </text>
        <text class="learn-tick" x={width - MARGIN.right} y={HEIGHT - 10} text-anchor="end">
          latest sale
        </text>
      </svg>
      <figcaption class="small quiet">{caption}</figcaption>
    </figure>
  );
}
