import type { Estimate } from '../../../src/domain/money/estimate.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { AdjustedComp } from '../../../src/domain/retail/adjusted-comp.ts';
import type { RetailFromComps } from '../../../src/domain/retail/retail-from-comps.ts';
import { tQuantile } from '../../../src/domain/statistics/student-t.ts';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { whole } from './retail-words.ts';

export interface AdjustmentGridProps {
  readonly grid: RetailFromComps;
  readonly guess: Estimate | undefined;
}

/** Every step from each comparable's price to what it says of this lot, for whoever has a pocket calculator. */
export function AdjustmentGrid({ grid, guess }: AdjustmentGridProps) {
  return (
    <details>
      <summary class="strong">Every step, to check by hand</summary>
      <div class="stack comp-open">
        <ScrollX label="Adjustment of each comparable">
          <table class="ledger adjustments">
            <thead>
              <tr>
                <th scope="col">Comparable</th>
                <th scope="col">Step</th>
                <th scope="col" class="number">
                  Change
                </th>
                <th scope="col" class="number">
                  Result
                </th>
              </tr>
            </thead>
            {grid.comps.map((one, index) => (
              <CompSteps key={index} index={index} one={one} />
            ))}
          </table>
        </ScrollX>
        <Together grid={grid} guess={guess} />
      </div>
    </details>
  );
}

function CompSteps({ index, one }: { index: number; one: AdjustedComp }) {
  const { comp, steps, adjusted } = one;
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" rowSpan={steps.length + 1}>
          {index + 1}
          {comp.leftOut ? ', left out' : one.tooFar === undefined ? '' : ', not counted'}
        </th>
        <td>{comp.kind === 'sold' ? 'Sold at' : 'Asking'}</td>
        <td />
        <td class="number">{formatMoney(comp.price)}</td>
      </tr>
      {steps.map((step, i) => (
        <tr key={i}>
          <td>{step.label}</td>
          <td class="number">{formatMoney(step.change, { sign: 'always' })}</td>
          <td class={step.result === adjusted && i === steps.length - 1 ? 'number strong' : 'number'}>
            {formatMoney(step.result)}
          </td>
        </tr>
      ))}
    </tbody>
  );
}

/** How the adjusted prices become one figure and its range. */
function Together({ grid, guess }: AdjustmentGridProps) {
  const { counted, guessCounts, middle, low, high, carSpread, freedom, scale } = grid;
  if (counted === 0) return null;
  const quantile = tQuantile(0.9, freedom);
  return (
    <ol class="plain-list">
      <li>
        Take the logarithm of each of the {counted} counted figures
        {guess && (
          <>
            , and of your estimate of {formatMoney(guess.likely)}, which counts as {round(guessCounts, 3)} of a
            comparable because of its range
          </>
        )}
        .
      </li>
      <li>
        Their average, {guess ? 'each with its weight, ' : ''}turned back into dollars, is{' '}
        <strong>{formatMoney(middle)}</strong>.
      </li>
      <li>
        One car sells {percent(carSpread)} from another of its kind, judging by these cars. With the uncertainty of the
        average and of the adjustments that is {percent(scale)}.
      </li>
      <li>
        With {freedom} degrees of freedom one in ten lies beyond {round(quantile, 4)} times that: {formatMoney(middle)}{' '}
        × e^(±{round(quantile * scale, 5)}) is {whole(low)} to {whole(high)}.
      </li>
    </ol>
  );
}

const round = (value: number, digits: number): string => String(Number(value.toFixed(digits)));
const percent = (share: number): string => `${round(share * 100, 2)}%`;
