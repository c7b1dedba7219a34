import type { ComponentChildren } from 'preact';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import './staircase.css';

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

export interface StaircaseProps {
  readonly from: {
    readonly label: string;
    readonly cents: Cents;
    readonly range?: { readonly low: Cents; readonly high: Cents };
    /** What it rests on, shown when it is opened. */
    readonly inputs?: ComponentChildren;
  };
  readonly steps: readonly Step[];
  readonly to: { readonly label: string; readonly cents: Cents };
}

/** Money walking downstairs: a row a cost, each bar starting where the one above it ended. */
export function Staircase({ from, steps, to }: StaircaseProps) {
  const scale = scaleOf(from, to);
  let level = from.cents as number;
  return (
    <div class="stairs">
      <Landing {...from} scale={scale} />
      <ul class="stairs-list">
        {steps.map((step) => {
          const above = level;
          level -= step.cents;
          return <StairRow key={step.key} step={step} above={above} below={level} scale={scale} />;
        })}
      </ul>
      <Landing label={to.label} cents={to.cents} scale={scale} last />
    </div>
  );
}

interface Scale {
  readonly left: number;
  readonly right: number;
}

/** The stairs fill the width: a little ground is left under the lowest step, the rest of the price is cut away. */
function scaleOf(from: StaircaseProps['from'], to: StaircaseProps['to']): Scale {
  const right = Math.max(from.cents, from.range?.high ?? 0);
  return { left: Math.max(0, to.cents - (right - to.cents) * 0.25), right };
}

const place = (cents: number, scale: Scale) =>
  `${Math.min(100, Math.max(0, ((cents - scale.left) / (scale.right - scale.left || 1)) * 100))}%`;

const gap = (from: number, to: number, scale: Scale) =>
  `${Math.max(0, (Math.abs(to - from) / (scale.right - scale.left || 1)) * 100)}%`;

function StairRow({ step, above, below, scale }: { step: Step; above: number; below: number; scale: Scale }) {
  const line = (
    <>
      <span class="stair-label">{step.label}</span>
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

/** The doubt beside the figure: one in ten below, one in ten above. */
function Spread({ range }: { range: Step['range'] }) {
  return (
    <span class="stair-range quiet small">
      {range && `${formatMoney(range.low, WHOLE)} to ${formatMoney(range.high, WHOLE)}`}
    </span>
  );
}

function Landing(props: StaircaseProps['from'] & { scale: Scale; last?: boolean }) {
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
