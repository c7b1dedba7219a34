import { useState } from 'preact/hooks';
import { feeEdges } from '../../../src/domain/fees/fee-edges.ts';
import type { FeeEdition } from '../../../src/domain/fees/fee-schedule.ts';
import { feesAt } from '../../../src/domain/fees/fees-at.ts';
import { type Cents, cents, sumCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { FeePicture } from './fee-picture.tsx';

/** The fees of one hammer price under these rates, line by line, for comparing with an invoice. */
export function TrialPrice({ edition }: { edition: FeeEdition }) {
  const [price, setPrice] = useState(cents(1_000_000));
  const tables = edition.tables.filter((table) => table.bands[0]?.fromCents === 0);
  const lines = [...feesAt(price, tables), ...edition.charges];
  const total = sumCents(lines.map((line) => line.cents));
  return (
    <fieldset class="stack trial">
      <legend>Try a hammer price</legend>
      <div class="trial-body">
        <div class="stack">
          <MoneyInput
            label="Hammer price"
            value={price}
            required
            onCommit={(next) => next !== undefined && setPrice(next)}
          />
          <Ledger
            live
            rows={lines}
            rowKey={(_, index) => index}
            columns={[
              { label: '', cell: ({ label }) => label || 'New fee', total: 'Total fees' },
              {
                label: '',
                number: true,
                cell: (line) => formatMoney(line.cents, { cents: 'always' }),
                total: formatMoney(total, { cents: 'always' }),
              },
            ]}
            foot={
              <tr>
                <td>With the hammer price</td>
                <td class="number">{formatMoney(cents(price + total), { cents: 'always' })}</td>
              </tr>
            }
          />
          <p class="small">{edgeInWords(edition, price)}</p>
        </div>
        <FeePicture tables={tables} charges={edition.charges} price={price} />
      </div>
    </fieldset>
  );
}

/** What happens to the fee at the next edge above the price. */
function edgeInWords(edition: FeeEdition, price: Cents): string {
  const edge = feeEdges(edition.tables).find((each) => each.price > price);
  if (edge === undefined) return 'No band starts above this price.';
  const at = formatMoney(edge.price);
  if (edge.jump === 0) return `The next band starts at ${at}, without a jump.`;
  const size = formatMoney(cents(Math.abs(edge.jump)));
  return edge.jump > 0
    ? `The next band starts at ${at}: there the fee jumps by ${size}.`
    : `The next band starts at ${at}: there the fee falls by ${size}, so a slightly higher price costs less in total.`;
}
