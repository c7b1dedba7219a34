import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import { lastDayOf, type Month, monthOf } from '../../domain/books/month.ts';
import { type AccrualMonths, accrualOf } from '../../domain/books/post/accrual.ts';
import { cents, sumCents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BankState } from '../../journal/states/bank-state.ts';
import { byClose, isOpenClosing } from '../results/open-closings.ts';
import { countWords } from '../words/count-words.ts';
import { dateInWords } from '../words/date-words.ts';
import { openLinesOf } from './bank-lines.ts';
import { folderName } from './folder-name.ts';
import { payablesOf } from './payables-of.ts';

/** One thing that is open when a month is closed, and where it is settled. */
export interface ClosingLine {
  readonly key: string;
  readonly what: string;
  readonly more: string;
  readonly hash: string;
}

export interface ClosingGroup {
  readonly title: string;
  /** What closing does about it. */
  readonly means: string;
  readonly lines: readonly ClosingLine[];
}

export interface ClosingSeen {
  readonly folders: readonly PurchaseFolder[];
  /** Every lot, dropped ones too. */
  readonly lots: readonly LotState[];
  readonly setup: Setup;
  readonly accruals: AccrualMonths;
  readonly now: Instant;
  readonly bank: BankState;
}

/** What is missing from a month, by kind; kinds of which nothing is missing are left out. */
export function closingOpen(seen: ClosingSeen, month: Month): readonly ClosingGroup[] {
  return [resultsMissing, notBilled, billsAstray, differing, refundsToCome, billsUnpaid, bankOpen]
    .map((group) => group(seen, month))
    .filter(({ lines }) => lines.length > 0);
}

type Group = (seen: ClosingSeen, month: Month) => ClosingGroup;

const resultsMissing: Group = ({ lots, setup, now }, month) => ({
  title: 'Closes without a result',
  means: 'A win among them would be missing from the month.',
  lines: lots
    .filter(
      (lot) =>
        !lot.dropped &&
        lot.facts.close !== undefined &&
        monthOf(dateIn(setup.store.zone, lot.facts.close.instant)) <= month &&
        isOpenClosing(lot, now),
    )
    .sort(byClose)
    .map(({ id, facts }) => ({
      key: id,
      what: folderName(facts),
      more: facts.venueName ?? '',
      hash: '#/results/missing',
    })),
});

const notBilled: Group = ({ folders, accruals }, month) => {
  const last = lastDayOf(month);
  const waiting = folders.flatMap((folder) => {
    const accrual = accrualOf(folder, accruals);
    if (accrual === undefined || accrual.on > last || (accrual.back !== undefined && accrual.back.on <= last))
      return [];
    const early = accrual.feesBackOn !== undefined && accrual.feesBackOn <= last;
    return [{ folder, amount: cents(accrual.hammer + (early ? 0 : accrual.fees)) }];
  });
  return {
    title: 'Won, and not billed at the end of the month',
    means: `${formatMoney(sumCents(waiting.map(({ amount }) => amount)))} stands as accrued, from price and expected fees, until the bills come.`,
    lines: waiting.map(({ folder: { lot, facts, won }, amount }) => ({
      key: lot,
      what: folderName(facts),
      more: [facts.venueName, won && `won ${dateInWords(won.date)}`, formatMoney(amount)].filter(Boolean).join(', '),
      hash: `#/books/${lot}`,
    })),
  };
};

const billsAstray: Group = ({ folders }, month) => ({
  title: 'Bills without a won car',
  means: 'The result is missing or wrong, or the bill is.',
  lines: folders
    .filter(({ stage, costs }) => stage === 'not-won' && costs.some(({ date }) => monthOf(date) <= month))
    .map(({ lot, facts, costs }) => ({
      key: lot,
      what: folderName(facts),
      more: countWords(costs.length, 'line', 'lines'),
      hash: `#/books/${lot}`,
    })),
});

const differing: Group = ({ folders }, month) => ({
  title: 'Amounts that differ from what was expected',
  means: 'They stay as they were billed.',
  lines: folders
    .filter(({ won, look, stage }) => won !== null && monthOf(won.date) === month && look && stage !== 'undone')
    .map(({ lot, facts }) => ({
      key: lot,
      what: folderName(facts),
      more: facts.venueName ?? '',
      hash: `#/books/${lot}`,
    })),
});

const refundsToCome: Group = ({ folders }, month) => ({
  title: 'Canceled, with a refund still to come',
  means: 'It stands against what is owed to the venue.',
  lines: folders
    .filter(({ undoneOn, owed }) => undoneOn !== undefined && monthOf(undoneOn) <= month && owed < 0)
    .map(({ lot, facts, owed }) => ({
      key: lot,
      what: folderName(facts),
      more: [facts.venueName, formatMoney(cents(-owed))].filter(Boolean).join(', '),
      hash: `#/books/${lot}`,
    })),
});

const billsUnpaid: Group = ({ folders, setup }, month) => {
  const { inOrder, owed, nameOf } = payablesOf(folders, setup, lastDayOf(month));
  return {
    title: 'Bills not paid at the end of the month',
    means: `${formatMoney(owed)} stands as payable.`,
    lines: inOrder.map(({ id, vendor, number, open, dueOn }) => ({
      key: id,
      what: number === undefined ? nameOf(vendor) : `${nameOf(vendor)}, no. ${number}`,
      more: `${formatMoney(open)}, due ${dateInWords(dueOn)}`,
      hash: '#/books/payables',
    })),
  };
};

const bankOpen: Group = ({ bank }, month) => {
  const lines = openLinesOf(bank).filter(({ date }) => monthOf(date) <= month);
  return {
    title: 'Bank lines not matched',
    means: `${formatMoney(sumCents(lines.map((line) => line.cents)))} in all is at the bank and not matched with what is recorded.`,
    lines: lines.map(({ key, text, date, cents: amount }) => ({
      key,
      what: text,
      more: `${formatMoney(amount)}, ${dateInWords(date)}`,
      hash: '#/books/bank',
    })),
  };
};
