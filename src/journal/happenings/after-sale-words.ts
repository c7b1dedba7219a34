import type { NotedStepName } from '../../domain/after-sale/win-step.ts';
import type { DisputeOutcome, DisputeStep } from '../../domain/dispute/dispute.ts';
import { ENDING_WORDS, STEP_WORDS } from '../../domain/dispute/ending-words.ts';
import { REASON_WORDS } from '../../domain/dispute/reason-words.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { AFTER_SALE } from './after-sale.ts';
import type { WordsFor } from './row.ts';

/** A step after a win, as it reads once it is done. */
export const DONE_WORDS: Readonly<Record<NotedStepName, string>> = {
  pay: 'Paid',
  transport: 'Transport arranged',
  deliver: 'Delivered',
  inspect: 'Inspected',
  title: 'Title received',
  fund: 'Floor-planned or funded',
  refund: 'Refund received',
};

/** What followed the hammer, in plain words. */
export const AFTER_SALE_WORDS: WordsFor<typeof AFTER_SALE> = {
  'step-noted': ({ step, done, cents, note }) => {
    const what = `${DONE_WORDS[step]}${cents === undefined ? '' : ` ${formatMoney(cents)}`}`;
    return [done ? what : `Undone: ${DONE_WORDS[step].toLowerCase()}`, note].filter(Boolean).join('. ');
  },
  'dispute-opened': ({ opened: { side, reason, askedCents, words } }) => {
    const asked = askedCents === undefined ? '' : `, ${formatMoney(askedCents)} claimed`;
    return `${side === 'ours' ? 'We opened a dispute' : 'A dispute was opened against us'}: ${REASON_WORDS[reason]}${asked}. ${words}`;
  },
  'dispute-changed': () => 'Dispute: details changed',
  'dispute-stepped': ({ step }) => `Dispute: ${sayStep(step)}`,
  'dispute-closed': ({ outcome }) => `Dispute closed: ${sayOutcome(outcome)}`,
};

/** One line of a dispute's history. */
export function sayStep({ what, who, need, cents, words }: DisputeStep): string {
  const first = [
    need === undefined ? STEP_WORDS[what] : `${STEP_WORDS[what]}: ${need.charAt(0).toLowerCase()}${need.slice(1)}`,
    cents === undefined ? '' : formatMoney(cents),
    who === undefined ? '' : `(${who})`,
  ];
  return [first.filter(Boolean).join(' '), words].filter(Boolean).join(': ');
}

/** How a dispute ended, with its money. */
export function sayOutcome({ ended, cents, words }: DisputeOutcome): string {
  const money =
    cents === undefined || cents === 0
      ? ''
      : cents > 0
        ? `, ${formatMoney(cents)} to us`
        : `, ${formatMoney(cents)} from us`;
  return [`${ENDING_WORDS[ended]}${money}`, words].filter(Boolean).join('. ');
}
