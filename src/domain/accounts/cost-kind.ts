import * as z from 'zod/mini';

/** What a cost is for. Each has an account of its own in the setup, and is either part of the car's cost or an expense. */
export const COST_KINDS = [
  'hammer',
  'fee',
  'transport',
  'recon',
  'interest',
  'floor-fee',
  'sales-tax',
  'other',
] as const;
export const costKindSchema = z.enum(COST_KINDS);
export type CostKind = z.infer<typeof costKindSchema>;
