import { useId } from 'preact/hooks';
import type { Figure } from '../../../src/domain/learn/corrections/finding.ts';

const WIDTH = 180;
const HEIGHT = 22;
const EDGE = 8;

/**
 * A value with its range: the range fades out to its ends, the value is a firm line, and what counts without the
 * correction is a dashed one. The same is said in words beside it.
 */
export function LearnedRange({ figure }: { figure: Figure }) {
  const id = useId();
  const { without, learned } = figure;
  const { value, low, high } = learned;
  const [least, most] = [Math.min(low, without), Math.max(high, without)];
  const at = (x: number) => EDGE + ((x - least) / Math.max(1e-9, most - least)) * (WIDTH - 2 * EDGE);
  return (
    <svg class="learned-range" width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <linearGradient id={id}>
        <stop class="learned-soft" offset="0" />
        <stop class="learned-firm" offset={(at(value) - at(low)) / Math.max(1e-9, at(high) - at(low))} />
        <stop class="learned-soft" offset="1" />
      </linearGradient>
      <line class="learned-line" x1={EDGE} x2={WIDTH - EDGE} y1={HEIGHT / 2} y2={HEIGHT / 2} />
      <rect x={at(low)} width={Math.max(1, at(high) - at(low))} y="5" height={HEIGHT - 10} fill={`url(#${id})`} />
      <line class="learned-without" x1={at(without)} x2={at(without)} y1="1" y2={HEIGHT - 1} />
      <line class="learned-value" x1={at(value)} x2={at(value)} y1="3" y2={HEIGHT - 3} />
    </svg>
  );
}
