import type { CostKind } from '../../domain/accounts/cost-kind.ts';

const COSTS: readonly (readonly [CostKind, RegExp])[] = [
  // A fee for papers about the tax is a fee.
  ['sales-tax', /\b(?:sales|use|state|city|county) tax\b(?!.*\b(?:fee|certificate|exempt\w*)\b)/],
  ['interest', /\binterest\b/],
  ['floor-fee', /\b(?:floor ?plan|curtailment)\b/],
  ['transport', /\b(?:transport\w*|freight|ship\w*|haul\w*|delivery)\b/],
  [
    'hammer',
    /\b(?:hammer|sale price|sold price|purchase price|selling price|vehicle price|vehicle purchase|vehicle|sale of|bid)\b(?!.*\bfee)/,
  ],
  ['recon', /\b(?:recon\w*|repairs?|detail\w*|tires?)\b/],
  ['fee', /\b(?:fees?|pass|papers?|documents?|premium|charges?)\b/],
];

/** The kind of cost that plain words name; `other` when they name none. */
export const costOfWords = (words: string): CostKind =>
  COSTS.find(([, pattern]) => pattern.test(words))?.[0] ?? 'other';
