import { type Cents, cents } from '../../money/cents.ts';
import { formatMoney } from '../../money/format-money.ts';
import { daysBetween } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { PAPERS } from '../booking.ts';
import type { FolderSource, FolderStage } from './folder.ts';

export const PAPER_WORDS: Readonly<Record<(typeof PAPERS)[number], string>> = {
  title: 'Title',
  'bill-of-sale': 'Bill of sale',
  'odometer-statement': 'Odometer statement',
  'transport-receipt': 'Transport receipt',
};

/** What a folder still lacks, in words short enough for a list. Nothing for one that is undone. */
export function missingFrom(source: FolderSource, stage: FolderStage, open: Cents, today: LocalDate): string[] {
  const settlements = (source.settlements ?? []).map(({ cents }) => settlementInWords(cents));
  if (stage === 'undone' || stage === 'not-won') return settlements;
  const { costs, payments, floor, papers, expected, won } = source;
  const has = (cost: string) => costs.some((line) => line.cost === cost);
  const age = won === null ? 0 : daysBetween(won.date, today);
  const missing: string[] = [];
  if (!has('hammer')) missing.push('Auction invoice');
  if (payments.length === 0 && floor.length === 0 && open > 0) missing.push('Payment');
  for (const paper of PAPERS) {
    if (paper === 'transport-receipt' && !expects(source, 'transport')) continue;
    if (papers.findLast((note) => note.paper === paper)?.date !== undefined) continue;
    missing.push(
      paper === 'title' && age > 0 ? `Title (${age} ${age === 1 ? 'day' : 'days'} since the win)` : PAPER_WORDS[paper],
    );
  }
  if (expects(source, 'transport') && !has('transport')) missing.push('Transport bill');
  missing.push(...settlements);
  if (stage === 'sold' && (expected?.lines ?? []).some(({ cost }) => cost === 'recon') && !has('recon'))
    missing.push('Recon bills');
  return missing;
}

const settlementInWords = (toUs: Cents): string =>
  toUs > 0 ? `Credit of ${formatMoney(toUs)} from a dispute` : `${formatMoney(cents(-toUs))} that a dispute costs`;

const expects = ({ expected, costs }: FolderSource, cost: string): boolean =>
  [...(expected?.lines ?? []), ...costs].some((line) => line.cost === cost);
