import * as z from 'zod/mini';
import type { CostKind } from './cost-kind.ts';

/** Parts divided by colons. Two blanks, or a mark with a meaning, would end the name in the journal's syntax. */
const PART = String.raw`[\p{L}\p{N}](?:[\p{L}\p{N}&/.'-]| (?=[^ :]))*`;
const NAME = new RegExp(`^${PART}(?::${PART})*$`, 'u');

const name = (fallback: string) =>
  z._default(
    z.string().check(
      z.maxLength(80),
      z.regex(NAME, {
        error: 'use letters, digits and single spaces, with parts separated by colons, such as Assets:Bank',
      }),
      z.describe('account name, parts separated by colons'),
    ),
    fallback,
  );

const accountsSchema = z.strictObject({
  inventory: name('Assets:Inventory:Vehicles'),
  bank: name('Assets:Bank'),
  payable: name('Liabilities:Payable:Vehicles'),
  accrued: name('Liabilities:Accrued:Vehicles'),
  floor: name('Liabilities:FloorPlan'),
  retail: name('Income:Sales:Retail'),
  wholesale: name('Income:Sales:Wholesale'),
  costOfSales: name('Expenses:CostOfSales'),
  undone: name('Expenses:UndoneSales'),
  hammer: name('Expenses:Vehicles:Purchases'),
  fee: name('Expenses:Vehicles:BuyFees'),
  transport: name('Expenses:Vehicles:Freight'),
  recon: name('Expenses:Vehicles:Recon'),
  interest: name('Expenses:FloorPlan:Interest'),
  'floor-fee': name('Expenses:FloorPlan:Fees'),
  'sales-tax': name('Assets:SalesTax:Refundable'),
  other: name('Expenses:Vehicles:Other'),
});
export type AccountNames = z.infer<typeof accountsSchema>;
/** Every account that the books write to. */
export type AccountKey = keyof AccountNames;

export const accountKeySchema = z.keyof(accountsSchema);
export const ACCOUNT_KEYS = Object.keys(accountsSchema.shape) as readonly AccountKey[];

const treatment = (fallback: 'inventory' | 'expense') =>
  z._default(
    z.enum(['inventory', 'expense']).check(z.describe('part of the car’s cost, or an expense right away')),
    fallback,
  );

/**
 * What is part of a car's cost, and what is an expense at once: price, fees, freight and recon bring the car to the state
 * and the place in which it is sold (ASC 330-10-30-1; for tax, 26 CFR 1.471-3(b)); interest and the lender's fees do not.
 * Sales tax that was paid stays with the car, unless it can be had back: then it is an asset until it comes.
 */
const treatmentSchema = z.strictObject({
  hammer: treatment('inventory'),
  fee: treatment('inventory'),
  transport: treatment('inventory'),
  recon: treatment('inventory'),
  interest: treatment('expense'),
  'floor-fee': treatment('expense'),
  'sales-tax': treatment('inventory'),
  other: treatment('inventory'),
} satisfies Record<CostKind, unknown>);
export type Treatment = z.infer<typeof treatmentSchema>;

/** How the books are kept: what the accounts are called, and which costs are part of a car's cost. */
export const bookkeepingSchema = z.strictObject({
  accounts: z._default(accountsSchema, accountsSchema.parse({})),
  treatment: z._default(treatmentSchema, treatmentSchema.parse({})),
});
export type Bookkeeping = z.infer<typeof bookkeepingSchema>;

/**
 * What a setup without this section counts as. Journals that were exported under these names go on under them, so they
 * never change; what a new setup begins with is `NEW_BOOKKEEPING`.
 */
export const STARTING_BOOKKEEPING: Bookkeeping = bookkeepingSchema.parse({});

/** The books of a setup, with what was added since it was saved. */
export const bookkeepingOf = ({ books }: { readonly books?: Bookkeeping | undefined }): Bookkeeping => ({
  accounts: { ...STARTING_BOOKKEEPING.accounts, ...books?.accounts },
  treatment: { ...STARTING_BOOKKEEPING.treatment, ...books?.treatment },
});

/** What a setup begins with when it is saved for the first time. */
export const NEW_BOOKKEEPING: Bookkeeping = bookkeepingSchema.parse({ accounts: { undone: 'Expenses:CanceledSales' } });
