import { ticks } from 'd3-array';
import type { AppraisedRetail } from '../../../src/domain/appraisal/appraised-retail.ts';
import { retailCurve } from '../../../src/domain/appraisal/retail-curve.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { counts } from '../../../src/domain/retail/adjusted-comp.ts';
import { useWidth } from '../../../src/ui/hooks/use-width.ts';
import { rangeWords, whole } from './retail-words.ts';
import './range-curve.css';

const HEIGHT = 190;
const MARGIN = { top: 24, right: 16, bottom: 54, left: 16 };

/** The range as a curve that fades, the comparables on it, and the ceiling as the hard edge that it is. */
export function RangeCurve({ retail, guess }: { retail: AppraisedRetail; guess: Cents | undefined }) {
  const [ref, width] = useWidth<HTMLElement>(560);
  const span = spanOf(retail, guess);
  const points = retailCurve(retail, span.from, span.to);
  const x = (price: number) =>
    MARGIN.left + ((price - span.from) / (span.to - span.from)) * (width - MARGIN.left - MARGIN.right);
  const floor = HEIGHT - MARGIN.bottom;
  const y = (height: number) => floor - height * (floor - MARGIN.top);
  const line = points
    .map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p.price).toFixed(1)} ${y(p.height).toFixed(1)}`)
    .join('');
  const area = `${line}L${x(span.to).toFixed(1)} ${floor}L${x(span.from).toFixed(1)} ${floor}Z`;
  const { mean, low, high, cap, grid, odd } = retail;
  const caption = `Retail: ${whole(mean)}, ${rangeWords(retail)}. ${marksWords(retail, guess)}`;
  return (
    <figure class="range-curve" ref={ref}>
      <svg width={width} height={HEIGHT} role="img" aria-label={caption}>
        <defs>
          <clipPath id="range-within">
            <rect x={x(low)} y={0} width={Math.max(0, x(high) - x(low))} height={floor} />
          </clipPath>
          <clipPath id="range-paid">
            <rect x={0} y={0} width={cap === undefined ? width : Math.max(0, x(cap))} height={floor} />
          </clipPath>
        </defs>
        <g clip-path="url(#range-paid)">
          <path class="range-all" d={area} />
          <path class="range-within" d={area} clip-path="url(#range-within)" />
        </g>
        <path class="range-line" d={line} />
        <line class="range-axis" x1={MARGIN.left} x2={width - MARGIN.right} y1={floor} y2={floor} />
        {ticks(span.from / 100, span.to / 100, Math.max(2, Math.floor(width / 110))).map((dollars) => (
          <text key={dollars} class="range-tick" x={x(dollars * 100)} y={HEIGHT - 6} text-anchor="middle">
            {formatMoney(cents(Math.round(dollars * 100)))}
          </text>
        ))}
        {cap !== undefined && (
          <g>
            <line class="range-cap" x1={x(cap)} x2={x(cap)} y1={MARGIN.top - 6} y2={floor} />
            <text class="range-mark" x={x(cap)} y={12} text-anchor={x(cap) > width * 0.6 ? 'end' : 'start'}>
              cap {whole(cap)}
            </text>
          </g>
        )}
        <line class="range-mean" x1={x(mean)} x2={x(mean)} y1={MARGIN.top} y2={floor + 6} />
        {guess !== undefined && (
          <path class="range-guess" d={`M${x(guess)} ${floor + 8}l6 8h-12z`}>
            <title>Your estimate: {whole(guess)}</title>
          </path>
        )}
        {grid?.comps.map((one, i) => {
          const isOdd = odd.some(({ index }) => index === i);
          return (
            <g key={i} class={counts(one) ? undefined : 'range-left-out'}>
              <circle
                class={one.comp.kind === 'sold' ? 'range-comp' : 'range-comp asking'}
                cx={x(one.adjusted)}
                cy={floor + 14}
                r={5}
              >
                <title>
                  Comparable {i + 1}, {one.comp.kind}: {whole(one.adjusted)} like this lot
                </title>
              </circle>
              {isOdd && (
                <text class="range-mark" x={x(one.adjusted)} y={floor + 33} text-anchor="middle">
                  odd
                </text>
              )}
            </g>
          );
        })}
      </svg>
      <figcaption class="small quiet">{caption}</figcaption>
    </figure>
  );
}

function marksWords({ grid }: AppraisedRetail, guess: Cents | undefined): string {
  const comps =
    (grid?.comps.length ?? 0) > 0 ? 'Filled dots sold, hollow ones are asking prices, each adjusted to this lot.' : '';
  return `${comps}${guess === undefined ? '' : ' The triangle is your estimate.'}`.trim();
}

/** The middle of the curve with some room on both sides, wide enough for every mark. */
function spanOf(
  { low, high, uncapped, cap, grid }: AppraisedRetail,
  guess: Cents | undefined,
): { from: Cents; to: Cents } {
  const marks = [low, high, uncapped, ...(cap === undefined ? [] : [cap]), ...(guess === undefined ? [] : [guess])];
  const all = [...marks, ...(grid?.comps ?? []).map((one) => one.adjusted)];
  const reach = Math.max(high - low, uncapped * 0.1);
  const from = Math.min(low - reach * 0.6, Math.min(...all) - reach * 0.15);
  const to = Math.max(uncapped + reach, Math.max(...all) + reach * 0.15);
  return { from: cents(Math.max(100, Math.round(from))), to: cents(Math.round(to)) };
}
