import type { ComponentChildren } from 'preact';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { countWords } from '../../views/words/count-words.ts';

/** A spread is never known to the cent. */
const WHOLE = { cents: 'never' } as const;

export interface Step {
  readonly key: string;
  readonly label: string;
  /** What the step takes away; negative where it gives something back. */
  readonly cents: Cents;
  readonly range?: { readonly low: Cents; readonly high: Cents };
  /** The inputs behind the step, shown when it is opened. */
  readonly inputs?: ComponentChildren;
}

/** Where the stairs begin or end. */
export interface LandingPlace {
  readonly label: string;
  readonly cents: Cents;
  readonly range?: { readonly low: Cents; readonly high: Cents };
  /** What it rests on, shown when it is opened. */
  readonly inputs?: ComponentChildren;
}

/** What the width of the stairs spans, in cents. */
export interface Scale {
  readonly left: number;
  readonly right: number;
}

const place = (cents: number, scale: Scale) =>
  `${Math.min(100, Math.max(0, ((cents - scale.left) / (scale.right - scale.left || 1)) * 100))}%`;

const gap = (from: number, to: number, scale: Scale) =>
  `${Math.max(0, (Math.abs(to - from) / (scale.right - scale.left || 1)) * 100)}%`;

/** One step; where it has inputs, they open below it. */
export function StairRow({ step, above, scale }: { step: Step; above: number; scale: Scale }) {
  const line = <StairLine step={step} above={above} scale={scale} />;
  if (step.inputs === undefined) return <li class="stair">{line}</li>;
  return (
    <li>
      <details>
        <summary class="stair">{line}</summary>
        <div class="stair-inputs">{step.inputs}</div>
      </details>
    </li>
  );
}

interface StairLineProps {
  readonly step: Omit<Step, 'inputs'>;
  /** The level at which it begins, in cents. */
  readonly above: number;
  readonly scale: Scale;
  /** How many lines it sums up. */
  readonly of?: number;
}

/** A step's name, its bar from where the one above ended, its doubt and its amount. */
export function StairLine({ step, above, scale, of }: StairLineProps) {
  const below = above - step.cents;
  return (
    <>
      <span class="stair-label">
        {step.label}
        {of !== undefined && <span class="quiet stair-of"> {countWords(of, 'line', 'lines')}</span>}
      </span>
      <span class="stair-track" aria-hidden="true">
        <span
          class={step.cents < 0 ? 'stair-bar up' : 'stair-bar'}
          style={{ left: place(Math.min(above, below), scale), width: gap(above, below, scale) }}
        />
        {step.range && (
          <span
            class="stair-spread"
            style={{ left: place(above - step.range.high, scale), width: gap(step.range.low, step.range.high, scale) }}
          />
        )}
      </span>
      <Spread range={step.range} />
      <span class="stair-amount">
        {step.cents < 0 ? '+' : '−'}
        {formatMoney(Math.abs(step.cents) as Cents)}
      </span>
    </>
  );
}

/** The doubt beside the figure: one in ten below, one in ten above. */
function Spread({ range }: { range: Step['range'] }) {
  return (
    <span class="stair-range quiet small">
      {range && `${formatMoney(range.low, WHOLE)} to ${formatMoney(range.high, WHOLE)}`}
    </span>
  );
}

/** The retail at the top, and the max bid at the foot. */
export function Landing(props: LandingPlace & { scale: Scale; last?: boolean }) {
  const { label, cents, range, inputs, scale, last } = props;
  const line = (
    <>
      <span class="stair-label">{label}</span>
      <span class="stair-track" aria-hidden="true">
        <span class="stair-bar" style={{ left: 0, width: place(cents, scale) }} />
        {range && (
          <span
            class="stair-spread"
            style={{ left: place(range.low, scale), width: gap(range.low, range.high, scale) }}
          />
        )}
      </span>
      <Spread range={range} />
      <span class="stair-amount">{formatMoney(cents)}</span>
    </>
  );
  if (inputs === undefined || inputs === null) {
    return <div class={last ? 'stair landing last' : 'stair landing'}>{line}</div>;
  }
  return (
    <details>
      <summary class="stair landing">{line}</summary>
      <div class="stair-inputs">{inputs}</div>
    </details>
  );
}
