import { formatMoney } from '../../domain/money/format-money.ts';
import type { PLAN } from './plan.ts';
import type { WordsFor } from './row.ts';

/** What the plan was told, in plain words. */
export const PLAN_WORDS: WordsFor<typeof PLAN> = {
  'plan-choice': ({ choice }) => (choice === null ? 'Planned like the others again' : CHOICE_WORDS[choice]),
  'purse-set': ({ purse }) => (purse === null ? 'Purse removed' : `Purse set: cash ${formatMoney(purse.cashCents)}`),
};

const CHOICE_WORDS = {
  pinned: 'Pinned in the plan',
  skipped: 'Skipped in the plan',
  'plan-ignored': 'Plan ignored for this lot',
} as const;
