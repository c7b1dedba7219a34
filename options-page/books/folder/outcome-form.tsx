import { useState } from 'preact/hooks';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DateInput } from '../../../src/ui/inputs/date-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

type Buyer = 'retail' | 'business' | 'wholesale';
const BUYERS: readonly { value: Buyer; label: string }[] = [
  { value: 'retail', label: 'A customer' },
  { value: 'business', label: 'A business' },
  { value: 'wholesale', label: 'Wholesale' },
];

/** How the car went away: for how much, when, and to whom. */
export function OutcomeForm({ folder }: { folder: PurchaseFolder }) {
  const { today } = useBooks();
  const book = useBook();
  const { outcome } = folder;
  const [price, setPrice] = useState<Cents | undefined>(outcome?.priceCents);
  const [date, setDate] = useState<LocalDate | undefined>(outcome?.date);
  const [buyer, setBuyer] = useState<Buyer>(outcome?.buyer ?? 'retail');
  const [gross, setGross] = useState<Cents | undefined>(outcome?.grossCents);
  const keep = () =>
    price !== undefined &&
    book(
      {
        kind: 'outcome-booked',
        lot: folder.lot,
        date: date ?? today,
        priceCents: price,
        buyer,
        ...(gross !== undefined && { grossCents: gross }),
      },
      `Sold for ${formatMoney(price)}.`,
    );
  return (
    <details class="panel">
      <summary>{outcome === undefined ? 'Sold' : 'Correct the sale'}</summary>
      <div class="stack">
        <div class="fields">
          <MoneyInput label="Sold for" value={price} hint="Before sales tax and plates" onCommit={setPrice} />
          <DateInput label="Sale date" value={date ?? today} onCommit={setDate} />
          <MoneyInput
            label="Gross on the deal sheet"
            value={gross}
            hint="If different from the folder"
            onCommit={setGross}
          />
        </div>
        <RadioChoice legend="To" value={buyer} choices={BUYERS} onCommit={setBuyer} />
        <div class="row">
          <button type="button" class="main" disabled={price === undefined} onClick={keep}>
            Record the sale
          </button>
        </div>
      </div>
    </details>
  );
}
