import type { CostKind } from '../../domain/accounts/cost-kind.ts';

/** What each kind of cost is called where one is chosen. */
export const COST_WORDS: Readonly<Record<CostKind, string>> = {
  hammer: 'Hammer price',
  fee: 'Buy fee or charge of the sale',
  transport: 'Transport',
  recon: 'Recon',
  interest: 'Floor-plan interest',
  'floor-fee': 'Lender’s fee',
  'sales-tax': 'Sales tax',
  other: 'Something else',
};
