import { CORRECTION_TERMS } from './correction-terms.ts';
import { COST_TERMS } from './cost-terms.ts';
import { FOLDER_TERMS } from './folder-terms.ts';
import { LEARN_TERMS } from './learn-terms.ts';
import { LOT_TERMS } from './lot-terms.ts';
import { MONEY_TERMS } from './money-terms.ts';
import { OTHER_TERMS } from './other-terms.ts';
import { PLAN_TERMS } from './plan-terms.ts';
import { RISK_TERMS } from './risk-terms.ts';
import type { Term } from './term.ts';

/** The id of each term, by which labels lead to its entry. */
export type TermId =
  | keyof typeof LOT_TERMS
  | keyof typeof COST_TERMS
  | keyof typeof CORRECTION_TERMS
  | keyof typeof RISK_TERMS
  | keyof typeof PLAN_TERMS
  | keyof typeof FOLDER_TERMS
  | keyof typeof MONEY_TERMS
  | keyof typeof LEARN_TERMS
  | keyof typeof OTHER_TERMS;

export interface TermGroup {
  readonly title: string;
  readonly terms: Readonly<Partial<Record<TermId, Term>>>;
}

/** All terms, in the order in which they are read on the Words page. */
export const GLOSSARY: readonly TermGroup[] = [
  { title: 'The lot', terms: LOT_TERMS },
  { title: 'From retail down to the max bid', terms: COST_TERMS },
  { title: 'Risk and cash', terms: RISK_TERMS },
  { title: 'The plan of the purse', terms: PLAN_TERMS },
  { title: 'What happened against what was expected', terms: LEARN_TERMS },
  { title: 'Corrections from your own results', terms: CORRECTION_TERMS },
  { title: 'Won cars, folders and results', terms: FOLDER_TERMS },
  { title: 'What you owe, and proof of time', terms: MONEY_TERMS },
  { title: 'Other words', terms: OTHER_TERMS },
];
