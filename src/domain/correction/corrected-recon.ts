import type { LotFacts } from '../lot/lot.ts';
import { cents, LARGEST_CENTS } from '../money/cents.ts';
import type { ReconLine } from '../money/estimate.ts';
import { type Corrections, reconFactor } from './corrections.ts';

/** The lot with its recon as experience has it: each line's amounts times what such lines came to. */
export function correctedRecon<Facts extends Pick<LotFacts, 'recon'>>(
  facts: Facts,
  corrections: Corrections | undefined,
): Facts {
  if (corrections?.recon === undefined || facts.recon === undefined) return facts;
  return { ...facts, recon: facts.recon.map((line) => times(line, reconFactor(corrections.recon, line.label))) };
}

function times(line: ReconLine, factor: number): ReconLine {
  if (factor === 1) return line;
  const { low, likely, high } = line.amount;
  const at = (amount: number) => cents(Math.min(LARGEST_CENTS, Math.round(amount * factor)));
  return {
    ...line,
    amount: {
      likely: at(likely),
      ...(low !== undefined && { low: at(low) }),
      ...(high !== undefined && { high: at(high) }),
    },
  };
}
