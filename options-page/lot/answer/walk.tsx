import { walkOf } from '../../../src/domain/worksheet/walk-of.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { Staircase, type Step } from '../../../src/ui/charts/staircase.tsx';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { TERM_OF_LINE } from '../../../src/views/words/words-hash.ts';
import { inputsBehind } from './inputs-behind.tsx';
import { retailBehind } from './retail-behind.tsx';

/** From retail down to the price to stop at, dollar by dollar; every step opens to what it is worked out from. */
export function Walk({ sheet }: { sheet: Worksheet }) {
  const { from, steps, to } = walkOf(sheet);
  // What stands behind a step is told of the figures as they were entered; each correction is a step of its own.
  const { uncorrected } = sheet;
  const entered =
    uncorrected === undefined
      ? sheet
      : { ...sheet, ...uncorrected, result: { ...sheet.result, breakdown: uncorrected.breakdown } };
  const { label, cents, range } = from;
  return (
    <figure class="stack">
      <h2>From retail down to the max bid</h2>
      <Staircase
        from={{ label, cents, ...(range ? { range } : {}), inputs: retailBehind(entered.appraisal.retail) }}
        steps={steps.map((line): Step => {
          return {
            key: line.key,
            label: line.label,
            cents: line.cents,
            ...(line.range ? { range: line.range } : {}),
            inputs: (
              <>
                {inputsBehind(line, entered)} <TermLink term={TERM_OF_LINE[line.group]}>What this is</TermLink>
              </>
            ),
          };
        })}
        to={{ label: sheet.result.maxBid === null ? 'Even at $0' : 'Max bid', cents: to }}
      />
    </figure>
  );
}
