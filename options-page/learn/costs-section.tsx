import type { Scores } from '../../src/domain/learn/learn-report.ts';
import type { VenueFees } from '../../src/domain/learn/scores/cost-score.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { Ledger } from '../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../src/ui/tables/scroll-x.tsx';
import { TermLink } from '../../src/ui/term-link.tsx';
import { moreWords, percent } from '../../src/views/learn/learn-words.ts';
import { NotYet } from './not-yet.tsx';

type ReconRow = Scores['recon'][number];
const WHOLE = { cents: 'never' } as const;
const money = (amount: Cents) => formatMoney(amount, WHOLE);

/** Recon and fees: estimates against bills, line by line and venue by venue. */
export function CostsSection({ recon, fees }: Pick<Scores, 'recon' | 'fees'>) {
  return (
    <section class="panel stack">
      <h2>Recon and fees</h2>
      {recon.length === 0 ? (
        <NotYet missing="no recon bill yet">
          Enter recon line by line on the worksheet, and record each bill in the folder under{' '}
          <a href="#/books">Books</a>.
        </NotYet>
      ) : (
        <ScrollX label="Recon against estimate">
          <Ledger
            caption="Recon"
            rows={recon}
            rowKey={({ label }) => label}
            columns={[
              { label: 'Line', heads: true, cell: ({ label }) => label },
              { label: 'Bills', number: true, cell: ({ cases }) => cases },
              { label: 'Estimated', number: true, cell: ({ score }) => (score === null ? '' : money(score.expected)) },
              { label: 'Billed', number: true, cell: ({ score }) => (score === null ? '' : money(score.actual)) },
              { label: 'Billed of estimate', number: true, cell: ratioWords },
            ]}
          />
        </ScrollX>
      )}
      <p class="small quiet prose">
        <TermLink term="recon-ratio">Billed of estimate</TermLink> leans toward 100% while there are few bills. Its
        range holds the truth in 19 of 20 cases.
      </p>
      {fees.score === null ? (
        <NotYet missing="no fee bill yet">
          Match the venue’s invoice under <a href="#/books/invoices">Books › Invoices</a>.
        </NotYet>
      ) : (
        <ScrollX label="Fees against the schedules">
          <Ledger
            caption={`Fees: ${fees.score.same} of ${fees.cases} cars were billed to the cent as the schedule says`}
            rows={fees.score.venues}
            rowKey={({ venue }) => venue}
            columns={[
              { label: 'Venue', heads: true, cell: ({ venue }) => venue },
              { label: 'Cars', number: true, cell: ({ cars }) => cars },
              { label: 'Billed otherwise', number: true, cell: ({ off }) => off },
              { label: 'A car, on average', number: true, cell: overWords },
            ]}
          />
        </ScrollX>
      )}
    </section>
  );
}

function ratioWords({ score, missing }: ReconRow) {
  if (score === null) return <span class="missing">{moreWords(missing, 'bill', 'bills')}</span>;
  if (score.ratio === null) return 'nothing was estimated';
  const { value, low, high, clear } = score.ratio;
  return (
    <>
      {clear ? <strong>{percent(value)}</strong> : percent(value)}{' '}
      <span class="small quiet">
        {percent(low)} to {percent(high)}
      </span>
    </>
  );
}

function overWords({ mean, range }: VenueFees) {
  const words = (amount: Cents) =>
    amount === 0 ? 'nothing' : `${formatMoney(cents(Math.abs(amount)))} ${amount > 0 ? 'over' : 'under'}`;
  return (
    <>
      {words(mean)}
      {range !== null && range.low !== range.high && (
        <span class="small quiet">
          {' '}
          {words(range.low)} to {words(range.high)}
        </span>
      )}
    </>
  );
}
