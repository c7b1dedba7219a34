import type { AccountKey, Treatment } from '../../accounts/accounts.ts';
import type { LotId } from '../../lot/lot.ts';
import { type Cents, cents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { accrualKey, type CarAccrual } from './accrual.ts';
import type { Posting, Transaction } from './transaction.ts';

interface Accruing {
  readonly lot: LotId;
  readonly name: string;
  /** Whose bill is waited for. */
  readonly payee?: string | undefined;
  readonly accrual?: CarAccrual | undefined;
  /** The day on which the car was sold; one whose purchase was canceled is not. */
  readonly soldOn?: LocalDate | undefined;
}

/**
 * An accrual and what takes it back. Of a car that is sold meanwhile it goes to cost of sales with the car, and comes
 * back from there, so that nothing is left in inventory. All of them together come to nothing once the bill is there.
 */
export function accrualTransactions(car: Accruing, treatment: Treatment): Transaction[] {
  const { lot, name, payee, accrual, soldOn } = car;
  if (accrual === undefined) return [];
  const { on, hammer, fees, back, feesBackOn } = accrual;
  const accountOn = (kind: 'hammer' | 'fee', date: LocalDate): AccountKey => {
    if (treatment[kind] === 'expense') return kind;
    return soldOn !== undefined && soldOn < date ? 'costOfSales' : 'inventory';
  };
  const entry = (
    key: string,
    date: LocalDate,
    what: string,
    amounts: readonly [AccountKey, number][],
  ): Transaction => ({
    key,
    lot,
    date,
    text: `${what} · ${name}`.slice(0, 300),
    postings: added(amounts),
    ...(payee !== undefined && { payee }),
  });
  /** Debits where the cost is on that day, with one credit against it; below zero the other way round. */
  const cost = (date: LocalDate, parts: { readonly hammer: Cents; readonly fees: Cents }, sign: 1 | -1) =>
    [
      [accountOn('hammer', date), sign * parts.hammer],
      [accountOn('fee', date), sign * parts.fees],
      ['accrued', -sign * (parts.hammer + parts.fees)],
    ] as const satisfies readonly [AccountKey, number][];
  const key = accrualKey(lot);
  const made = [entry(key, on, 'Accrued: won, not billed yet', cost(on, { hammer, fees }, 1))];
  if (feesBackOn !== undefined) {
    const part = { hammer: cents(0), fees };
    made.push(entry(`${key}-back-fees`, feesBackOn, 'Accrued fees reversed: billed', cost(feesBackOn, part, -1)));
  }
  const rest = { hammer, fees: feesBackOn === undefined ? fees : cents(0) };
  if (back !== undefined)
    made.push(entry(`${key}-back`, back.on, `Accrual reversed: ${back.why}`, cost(back.on, rest, -1)));
  if (soldOn !== undefined && soldOn >= on && (back === undefined || soldOn < back.on)) {
    const inStock: { readonly hammer: Cents; readonly fees: Cents } = {
      hammer: treatment.hammer === 'expense' ? cents(0) : hammer,
      fees: treatment.fee === 'expense' || (feesBackOn !== undefined && feesBackOn <= soldOn) ? cents(0) : fees,
    };
    const moved = inStock.hammer + inStock.fees;
    made.push(
      entry(`${key}-sold`, soldOn, 'Accrued cost of car sold', [
        ['costOfSales', moved],
        ['inventory', -moved],
      ]),
    );
  }
  return made;
}

/** One posting an account, none of nothing. */
function added(amounts: readonly (readonly [AccountKey, number])[]): Posting[] {
  const sums = new Map<AccountKey, number>();
  for (const [account, amount] of amounts) sums.set(account, (sums.get(account) ?? 0) + amount);
  return [...sums].flatMap(([account, sum]): Posting[] => (sum === 0 ? [] : [{ account, cents: cents(sum) }]));
}
