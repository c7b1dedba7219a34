import { type Cents, cents, sumCents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { AfterLot } from '../../src/views/after-sale/after-lot.ts';
import { countWords } from '../../src/views/words/count-words.ts';

/** What is promised and not yet paid, and what is to come back: the cash that is spoken for, as the books have it. */
export function MoneyOpen({ lots }: { lots: readonly AfterLot[] }) {
  const owing = lots.filter(({ money }) => owedOf(money) > 0);
  const back = lots.filter(({ money }) => (money?.toComeBack ?? 0) > 0);
  const unknown = owing.filter(({ money }) => money?.fees === undefined).length;
  return (
    <div class="money-open">
      <Sum
        label="Owed for won cars"
        amount={sumCents(owing.map(({ money }) => owedOf(money)))}
        under={`${countWords(owing.length, 'lot', 'lots')}, as billed, or else hammer and buy fees${unknown > 0 ? `; the fees of ${unknown} are not known` : ''}`}
      />
      <Sum
        label="Refunds due"
        amount={sumCents(back.map(({ money }) => money?.toComeBack ?? ZERO))}
        under={countWords(back.length, 'lot', 'lots')}
      />
    </div>
  );
}

const ZERO = sumCents([]);

/** To the sale and to others. */
const owedOf = (money: AfterLot['money']): Cents =>
  money === undefined ? ZERO : sumCents([money.toPay, cents(Math.max(0, money.others))]);

function Sum({ label, amount, under }: { label: string; amount: Cents; under: string }) {
  return (
    <div>
      <div class="small quiet">{label}</div>
      <div class="figure">{formatMoney(amount)}</div>
      <div class="small quiet">{under}</div>
    </div>
  );
}
