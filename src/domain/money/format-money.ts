import type { Cents } from './cents.ts';

export interface MoneyFormat {
  /** Whether cents are written: `auto` only where they are not zero; `never` rounds half away from zero. */
  readonly cents?: 'auto' | 'always' | 'never';
  /** `always` puts a plus before an amount above zero. */
  readonly sign?: 'auto' | 'always';
}

// Made once: a new formatter costs a thousand times what formatting does.
const dollars = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD', maximumFractionDigits: 0 });
const dollarsAndCents = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' });

/**
 * An amount as the tool writes it everywhere: "$9,725", "$9,725.50" where cents decide, "−$1,200" with a true minus.
 * `parseMoney` reads all of it back.
 */
export function formatMoney(amount: Cents, { cents = 'auto', sign = 'auto' }: MoneyFormat = {}): string {
  const whole = cents === 'never' || (cents === 'auto' && amount % 100 === 0);
  const size = (whole ? dollars : dollarsAndCents).format(Math.abs(amount) / 100);
  // An amount that rounds to nothing has no sign.
  if (amount === 0 || (cents === 'never' && Math.abs(amount) < 50)) return size;
  return amount < 0 ? `−${size}` : sign === 'always' ? `+${size}` : size;
}
