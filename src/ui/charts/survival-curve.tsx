import { ticks } from 'd3-array';
import type { Survival } from '../../domain/carrying/days-to-sell.ts';
import type { SurvivalStep } from '../../domain/carrying/kaplan-meier.ts';
import { useWidth } from '../hooks/use-width.ts';
import './survival-curve.css';

export interface SurvivalCurveProps {
  /** What is believed: the chance of being unsold by day. */
  readonly believed: Survival;
  /** What his own cars did; empty where there are too few to draw. */
  readonly steps: readonly SurvivalStep[];
  readonly horizon: number;
  /** The day by which half are sold. */
  readonly median: number;
  readonly caption: string;
}

const HEIGHT = 200;
const MARGIN = { top: 14, right: 12, bottom: 34, left: 48 };

/** The share of cars still unsold, day by day: what is assumed as a line, what the dealer's cars did as steps. */
export function SurvivalCurve({ believed, steps, horizon, median, caption }: SurvivalCurveProps) {
  const [ref, width] = useWidth<HTMLElement>(560);
  const most = Math.max(30, horizon);
  const x = (day: number) => MARGIN.left + (Math.min(day, most) / most) * (width - MARGIN.left - MARGIN.right);
  const y = (share: number) => HEIGHT - MARGIN.bottom - share * (HEIGHT - MARGIN.top - MARGIN.bottom);
  const line = Array.from({ length: 61 }, (_, i) => {
    const day = (i / 60) * most;
    return `${i === 0 ? 'M' : 'L'}${x(day).toFixed(1)} ${y(believed(day)).toFixed(1)}`;
  }).join('');
  return (
    <figure class="survival" ref={ref}>
      <svg width={width} height={HEIGHT} role="img" aria-label={caption}>
        {[0, 0.25, 0.5, 0.75, 1].map((share) => (
          <g key={share}>
            <line class="survival-grid" x1={MARGIN.left} x2={width - MARGIN.right} y1={y(share)} y2={y(share)} />
            <text class="survival-tick" x={MARGIN.left - 6} y={y(share)} dy="0.32em" text-anchor="end">
              {share * 100}%
            </text>
          </g>
        ))}
        {ticks(0, most, Math.max(3, Math.floor(width / 90))).map((day) => (
          <text key={day} class="survival-tick" x={x(day)} y={HEIGHT - 16} text-anchor="middle">
            {day}
          </text>
        ))}
        <text class="survival-tick" x={width - MARGIN.right} y={HEIGHT - 2} text-anchor="end">
          days on the lot
        </text>
        {steps.length > 0 && (
          <>
            <path class="survival-band" d={band(steps, x, y, most)} />
            <path class="survival-steps" d={stairs(steps, (step) => step.unsold, x, y, most)} />
          </>
        )}
        <path class="survival-believed" d={line} />
        <line class="survival-median" x1={x(median)} x2={x(median)} y1={y(0.5)} y2={y(0)} />
        <text class="survival-mark" x={x(median) + 5} y={y(0) - 6}>
          half by day {Math.round(median)}
        </text>
      </svg>
      <figcaption class="small quiet">{caption}</figcaption>
    </figure>
  );
}

type Scale = (value: number) => number;

function stairs(steps: readonly SurvivalStep[], of: (step: SurvivalStep) => number, x: Scale, y: Scale, most: number) {
  let path = `M${x(0).toFixed(1)} ${y(1).toFixed(1)}`;
  for (const step of steps.filter(({ day }) => day <= most))
    path += `H${x(step.day).toFixed(1)}V${y(of(step)).toFixed(1)}`;
  return `${path}H${x(most).toFixed(1)}`;
}

/** The interval of 95% around the steps: there from one step to the next, and as wide as it is at its start. */
function band(steps: readonly SurvivalStep[], x: Scale, y: Scale, most: number): string {
  const shown = steps.filter(({ day }) => day <= most);
  const ends = shown.map((step, i) => ({ ...step, until: shown[i + 1]?.day ?? most }));
  const top = ends.map(({ day, until, high }) => `${x(day)} ${y(high)}L${x(until)} ${y(high)}`).join('L');
  const bottom = ends
    .toReversed()
    .map(({ day, until, low }) => `${x(until)} ${y(low)}L${x(day)} ${y(low)}`)
    .join('L');
  return shown.length === 0 ? '' : `M${top}L${bottom}Z`;
}
