import type { LotFacts } from '../../domain/lot/lot.ts';
import { sumCents } from '../../domain/money/cents.ts';
import type { ReconLine } from '../../domain/money/estimate.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { type ReconTemplate, withTemplate } from '../../domain/setup/recon-template.ts';
import { expectedRecon } from '../../domain/worksheet/cost-lines.ts';
import { countWords } from '../words/count-words.ts';

/** What the lines of a template come to on average, as the worksheet counts them. */
export const templateSum = ({ lines }: Pick<ReconTemplate, 'lines'>): string =>
  formatMoney(sumCents(lines.map(expectedRecon)));

/** What a template does to the recon of some lots. */
export interface ReconOffer<Lot> {
  /** Those that get lines, with all their lines after it. */
  readonly changed: readonly { readonly lot: Lot; readonly recon: ReconLine[] }[];
  /** What came of it, said after the name of the template. */
  readonly said: string;
}

/** Works out what a template adds to each lot. Lines that a lot has stay as they are, and those that differ are named. */
export function offerRecon<Lot extends { readonly facts: LotFacts }>(
  lots: readonly Lot[],
  template: ReconTemplate,
): ReconOffer<Lot> {
  const each = lots.map((lot) => ({ lot, ...withTemplate(lot.facts.recon ?? [], template) }));
  const changed = each.filter(({ added }) => added.length > 0).map(({ lot, lines }) => ({ lot, recon: lines }));
  const left = [...new Set(each.flatMap((one) => one.left))];
  const lines = Math.max(0, ...each.map(({ added }) => added.length));
  const had = each.length - changed.length;
  return {
    changed,
    said: [
      changed.length === 0
        ? 'nothing to add, all its lines are there.'
        : `${countWords(lines, 'line', 'lines')} added.`,
      ...(had > 0 && changed.length > 0 ? [`${countWords(had, 'lot', 'lots')} had all of them.`] : []),
      ...(left.length > 0 ? [`Left as entered: ${left.join(', ')}.`] : []),
    ].join(' '),
  };
}
