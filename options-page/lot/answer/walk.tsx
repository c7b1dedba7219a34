import type { Line } from '../../../src/domain/deal/price-breakdown.ts';
import { type FlightKind, stairsOf } from '../../../src/domain/worksheet/stairs-of.ts';
import { walkOf } from '../../../src/domain/worksheet/walk-of.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import type { Step } from '../../../src/ui/charts/stair-rows.tsx';
import { Staircase } from '../../../src/ui/charts/staircase.tsx';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { TERM_OF_LINE } from '../../../src/views/words/words-hash.ts';
import { inputsBehind } from './inputs-behind.tsx';
import { retailBehind } from './retail-behind.tsx';

/** From retail down to the price to stop at: a flight for each thing that costs, its steps inside, each with its inputs. */
export function Walk({ sheet }: { sheet: Worksheet }) {
  const walk = walkOf(sheet);
  // What stands behind a step is told of the figures as they were entered; each correction is a step of its own.
  const { uncorrected } = sheet;
  const entered =
    uncorrected === undefined
      ? sheet
      : { ...sheet, ...uncorrected, result: { ...sheet.result, breakdown: uncorrected.breakdown } };
  const { label, cents, range } = walk.from;
  return (
    <figure class="stack">
      <h2>From retail down to the max bid</h2>
      <Staircase
        from={{ label, cents, ...(range ? { range } : {}), inputs: retailBehind(entered.appraisal.retail) }}
        flights={stairsOf(walk, entered.appraisal.risk?.costs).map(({ kind, steps, ...sum }) => ({
          key: kind,
          label: FLIGHT_WORDS[kind],
          ...sum,
          steps: steps.map((line) => stepOf(line, entered)),
        }))}
        to={{ label: sheet.result.maxBid === null ? 'Even at $0' : 'Max bid', cents: walk.to }}
      />
    </figure>
  );
}

const stepOf = (line: Line, sheet: Worksheet): Step => ({
  key: line.key,
  label: line.label,
  cents: line.cents,
  ...(line.range ? { range: line.range } : {}),
  inputs: (
    <>
      {inputsBehind(line, sheet)} <TermLink term={TERM_OF_LINE[line.group]}>What this is</TermLink>
    </>
  ),
});

const FLIGHT_WORDS: Readonly<Record<FlightKind, string>> = {
  value: 'Value',
  doubt: 'Doubt',
  recon: 'Recon',
  getting: 'Getting it',
  holding: 'Holding and selling it',
  corrections: 'Corrections from your results',
  profit: 'Your profit',
};
