import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import { othersIn } from '../sold/booked-lot.ts';

export interface OwedTo {
  /** Undefined for a sale whose name nobody gave. */
  readonly payee: string | undefined;
  /** Below zero when it is to come back. */
  readonly cents: Cents;
}

/** What is owed to the sale, which comes first, and to each of the others who sent bills that are not paid. */
export function owedTo({ facts, costs, payments, open }: PurchaseFolder): readonly [OwedTo, ...OwedTo[]] {
  const isOthers = othersIn(costs, facts);
  const owing = costs.filter(({ paid, payee }) => paid === 'owed' && isOthers(payee));
  const names = new Map(owing.flatMap(({ payee }) => (payee === undefined ? [] : [[plainWords(payee), payee]])));
  const total = (some: readonly { readonly cents: Cents }[]) => sumCents(some.map((one) => one.cents));
  const others = [...names].map(([name, payee]): OwedTo => {
    const his = (one: { readonly payee?: string | undefined }) => plainWords(one.payee ?? '') === name;
    return { payee, cents: cents(total(owing.filter(his)) - total(payments.filter(his))) };
  });
  return [{ payee: facts.venueName, cents: cents(open - total(others)) }, ...others];
}
