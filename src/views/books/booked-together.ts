import type { LotFacts, LotId } from '../../domain/lot/lot.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { EntryId } from '../../journal/ids.ts';
import type { BooksState, NotedCost, NotedPayment } from '../../journal/states/books-state.ts';
import { folderName } from './folder-name.ts';

/** One line of what was recorded in one go. */
export interface BookedLine {
  readonly key: string;
  readonly lot: LotId;
  /** "Buy fee $450, 2021 Larkspur Hauler". */
  readonly words: string;
}

/** Everything that was recorded together with a line, itself among it: undoing the whole takes all of it along. */
export function bookedTogether(
  { costs, payments }: Pick<BooksState, 'costs' | 'payments'>,
  entry: EntryId,
  factsOf: (lot: LotId) => LotFacts | undefined,
): readonly BookedLine[] {
  const line = ({ key, lot, cents }: NotedCost | NotedPayment, what: string): BookedLine => ({
    key,
    lot,
    words: `${what} ${formatMoney(cents)}, ${folderName(factsOf(lot) ?? {})}`,
  });
  return [
    ...costs.filter((one) => one.entry === entry).map((one) => line(one, one.label)),
    ...payments.filter((one) => one.entry === entry).map((one) => line(one, one.cents < 0 ? 'Refund' : 'Payment')),
  ];
}
