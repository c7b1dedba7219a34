import { useState } from 'preact/hooks';
import type { Cents } from '../../domain/money/cents.ts';
import { usePrinting } from '../hooks/use-printing.ts';
import { Landing, type LandingPlace, type Scale, StairLine, StairRow, type Step } from './stair-rows.tsx';
import './staircase.css';

/** Steps that belong together: one row with their sum until it is opened. A single step stands for itself. */
export interface StepGroup extends Omit<Step, 'inputs'> {
  readonly steps: readonly Step[];
}

export interface StaircaseProps {
  readonly from: LandingPlace;
  readonly flights: readonly StepGroup[];
  readonly to: { readonly label: string; readonly cents: Cents };
}

/** Money walking downstairs: a row a cost, each bar starting where the one above it ended. On paper every step is there. */
export function Staircase({ from, flights, to }: StaircaseProps) {
  const scale = scaleOf(from, to);
  const printing = usePrinting();
  let level = from.cents as number;
  return (
    <div class="stairs">
      <Landing {...from} scale={scale} />
      <ul class="stairs-list">
        {flights.map((flight) => {
          const above = level;
          level -= flight.cents;
          const [only, ...others] = flight.steps;
          return only !== undefined && others.length === 0 ? (
            <StairRow key={only.key} step={only} above={above} scale={scale} />
          ) : (
            <FlightRow key={flight.key} flight={flight} above={above} scale={scale} printing={printing} />
          );
        })}
      </ul>
      <Landing label={to.label} cents={to.cents} scale={scale} last />
    </div>
  );
}

/** Which flights are open, for as long as the page lives: the same on the next lot. */
const opened = new Map<string, boolean>();

interface FlightRowProps {
  readonly flight: StepGroup;
  readonly above: number;
  readonly scale: Scale;
  readonly printing: boolean;
}

function FlightRow({ flight, above, scale, printing }: FlightRowProps) {
  const [open, setOpen] = useState(opened.get(flight.key) ?? false);
  let level = above;
  return (
    <li>
      <details
        class="stair-flight"
        open={open || printing}
        onToggle={(event) => {
          // Paper opens it for itself.
          if (printing) return;
          opened.set(flight.key, event.currentTarget.open);
          setOpen(event.currentTarget.open);
        }}
      >
        <summary class="stair">
          <StairLine step={flight} above={above} scale={scale} of={flight.steps.length} />
        </summary>
        {(open || printing) && (
          <ul class="stairs-list stair-steps">
            {flight.steps.map((step) => {
              const from = level;
              level -= step.cents;
              return <StairRow key={step.key} step={step} above={from} scale={scale} />;
            })}
          </ul>
        )}
      </details>
    </li>
  );
}

/** The stairs fill the width: a little ground is left under the lowest step, the rest of the price is cut away. */
function scaleOf(from: StaircaseProps['from'], to: StaircaseProps['to']): Scale {
  const right = Math.max(from.cents, from.range?.high ?? 0);
  return { left: Math.max(0, to.cents - (right - to.cents) * 0.25), right };
}
