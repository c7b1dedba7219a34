import type { Charge, FeeTable } from '../fees/fee-schedule.ts';
import { PPM } from '../money/rate.ts';
import { isFree } from '../setup/fill-hole.ts';
import type { TitleBrand } from '../setup/money-rules.ts';
import type { Venue } from '../setup/venue.ts';
import type { DealProblem } from './deal-of.ts';

// What nobody has said yet and every max bid needs. Counted as nothing, each would make the max bid too high.

/** Whether the venue would charge $0 at every price without anybody having said that it does. */
export const isBillUnsaid = (
  venue: Venue,
  { fees, charges }: { readonly fees: readonly FeeTable[]; readonly charges: readonly Charge[] },
): boolean =>
  venue.noBuyFees !== true && charges.every(({ cents }) => cents === 0) && fees.every(({ bands }) => isFree(bands));

export const noFees = ({ name }: Venue): DealProblem => ({
  reason: 'no-fees',
  message: `“${name}” has no buy fees yet. Enter what a buyer pays there, or say that it charges none.`,
});

export const noTransport = ({ name }: Venue): DealProblem => ({
  reason: 'no-transport',
  message: `Transport from “${name}” is not set. Enter what it costs to bring a car home, or say that it is free.`,
});

export const unconfirmedTitle = ({ name, keepsPpm }: TitleBrand): DealProblem => ({
  reason: 'unconfirmed-title',
  message: `Nobody has confirmed what a car with the title “${name}” brings. ${(keepsPpm / PPM) * 100}% of clean retail is only a starting figure.`,
});
