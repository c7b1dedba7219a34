import type { OpenSettlement, PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { entryIdSchema } from '../../../src/journal/ids.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBook } from '../use-book.ts';

/** Money by which a dispute ended, each booked with a tap. Nothing is booked by itself. */
export function SettlementsPart({ folder }: { folder: PurchaseFolder }) {
  const { settlements = [] } = folder;
  if (settlements.length === 0) return null;
  return (
    <section class="stack" aria-labelledby="folder-settlements">
      <h2 id="folder-settlements">From a dispute, not recorded yet</h2>
      <ul class="plain-list stack">
        {settlements.map((settlement) => (
          <Settlement key={settlement.dispute} folder={folder} settlement={settlement} />
        ))}
      </ul>
    </section>
  );
}

function Settlement({ folder, settlement }: { folder: PurchaseFolder; settlement: OpenSettlement }) {
  const book = useBook();
  const { dispute, cents: toUs, date, ended } = settlement;
  const amount = formatMoney(cents(Math.abs(toUs)));
  const label = ended ?? 'Dispute reopened';
  const keep = () =>
    book(
      {
        kind: 'settlement-booked',
        dispute: entryIdSchema.parse(dispute),
        lot: folder.lot,
        date,
        ...(folder.facts.venueName && { payee: folder.facts.venueName }),
        label,
        cents: cents(-toUs),
      },
      `${label}: ${toUs > 0 ? `a credit of ${amount}` : amount} recorded.`,
    );
  return (
    <li class="row">
      <span>
        <a href={`#/dispute/${dispute}`}>{label}</a>, {dateInWords(date)}: {amount}{' '}
        {toUs > 0 ? 'off what you owe the auction and what the car cost' : 'more that you owe the auction'}
        {ended === undefined && ', to reverse what was recorded when it closed'}
      </span>
      <button type="button" class="no-print" onClick={keep}>
        Record {toUs > 0 ? `the credit of ${amount}` : amount}
      </button>
    </li>
  );
}
