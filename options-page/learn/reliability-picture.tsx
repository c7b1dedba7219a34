import type { ReliabilityBin } from '../../src/domain/learn/scores/chance-score.ts';
import { useWidth } from '../../src/ui/hooks/use-width.ts';

const HEIGHT = 280;
const MARGIN = { top: 24, right: 16, bottom: 42, left: 48 };

/** The chance that was given against the share that won: on the line where both agree. */
export function ReliabilityPicture({ bins, caption }: { bins: readonly ReliabilityBin[]; caption: string }) {
  const [ref, wide] = useWidth<HTMLElement>(420);
  const width = Math.min(wide, 480);
  const most = Math.min(1, Math.ceil(Math.max(0.4, ...bins.flatMap(({ said, won }) => [said, won.high])) * 5) / 5);
  const x = (share: number) => MARGIN.left + (share / most) * (width - MARGIN.left - MARGIN.right);
  const y = (share: number) => HEIGHT - MARGIN.bottom - (share / most) * (HEIGHT - MARGIN.top - MARGIN.bottom);
  const largest = Math.max(...bins.map(({ cases }) => cases), 1);
  const marks = Array.from({ length: Math.round(most * 5) + 1 }, (_, i) => i / 5);
  return (
    <figure class="learn-picture" ref={ref}>
      <svg width={width} height={HEIGHT} role="img" aria-label={caption}>
        {marks.map((share) => (
          <g key={share}>
            <line class="learn-grid" x1={x(0)} x2={x(most)} y1={y(share)} y2={y(share)} />
            <text class="learn-tick" x={MARGIN.left - 6} y={y(share)} dy="0.32em" text-anchor="end">
              {Math.round(share * 100)}%
            </text>
            <text class="learn-tick" x={x(share)} y={HEIGHT - 24} text-anchor="middle">
              {Math.round(share * 100)}%
            </text>
          </g>
        ))}
        <line class="learn-even" x1={x(0)} y1={y(0)} x2={x(most)} y2={y(most)} />
        {bins.map(({ said, won, cases }) => (
          <g key={said}>
            <line class="learn-whisker" x1={x(said)} x2={x(said)} y1={y(won.low)} y2={y(won.high)} />
            <circle class="learn-dot" cx={x(said)} cy={y(won.share)} r={4 + 5 * Math.sqrt(cases / largest)} />
          </g>
        ))}
        <text class="learn-tick" x={x(most)} y={HEIGHT - 6} text-anchor="end">
          chance that was given
        </text>
        <text class="learn-tick" x={MARGIN.left} y={12}>
          share that won
        </text>
      </svg>
      <figcaption class="small quiet">{caption}</figcaption>
    </figure>
  );
}
