import { type CashDue, cashNeed } from '../../../src/domain/carrying/cash-need.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { PPM } from '../../../src/domain/money/rate.ts';
import { addDays } from '../../../src/domain/time/calendar-day.ts';
import { sayDate } from '../../../src/domain/time/say-time.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import type { PricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { Fold } from '../fold.tsx';
import { percentWords } from '../risk/risk-words.ts';

export interface TitlePartProps {
  readonly facts: LotFacts;
  readonly context: PricingContext;
  readonly sheet: Worksheet;
}

/** What the title does to the price, whether a lender takes it, and the own cash that it takes, by when. */
export function TitlePart({ facts, context, sheet }: TitlePartProps) {
  const { deal, result } = sheet;
  const { breakdown } = result;
  const brand = facts.titleId === undefined ? undefined : context.titleById.get(facts.titleId);
  const off = breakdown.steps.find((line) => line.group === 'title');
  const need = cashNeed(
    breakdown,
    saleDates(facts, context),
    deal.funding.kind === 'floor' ? context.setup.carrying.floorPlan : undefined,
  );
  return (
    <Fold
      id="title"
      title="Title and cash"
      result={
        <>
          {brand?.name ?? 'Assumed clean'}
          {off && (
            <>
              , <strong>{formatMoney(off.cents)}</strong> off
            </>
          )}
          {brand?.floorable === false && <>, own cash only</>}
          {result.maxBid !== null && <span class="quiet">{need.sentence}</span>}
        </>
      }
    >
      {() => (
        <>
          {brand && (
            <dl class="facts">
              <div>
                <dt>
                  <TermLink term="title">% of clean retail</TermLink>
                </dt>
                <dd class="figure">{percentWords(brand.keepsPpm / PPM)}</dd>
              </div>
              <div>
                <dt>
                  <TermLink term="floor-plan">On the floor plan</TermLink>
                </dt>
                <dd class="figure">{brand.floorable ? 'can go' : 'can’t go'}</dd>
              </div>
              {brand.paper && (
                <div>
                  <dt>Papers needed</dt>
                  <dd>{brand.paper}</dd>
                </div>
              )}
            </dl>
          )}
          {brand?.caution && <p class="note">{brand.caution}</p>}
          {result.maxBid !== null && (
            <Ledger
              caption="Own cash at the max bid"
              rows={need.due}
              rowKey={(_, i) => i}
              columns={[
                { label: 'For', cell: ({ what }) => DUE_WORDS[what] },
                { label: 'By', cell: (due) => byWords(due) },
                { label: 'Amount', number: true, cell: (due) => formatMoney(due.cents) },
              ]}
            />
          )}
          <p class="quiet small">
            The % of clean retail is your own figure in <a href="#/setup/titles">Setup › Titles</a>. What you must
            disclose, and which papers you need, is law and differs by state.
          </p>
        </>
      )}
    </Fold>
  );
}

const DUE_WORDS: Record<CashDue['what'], string> = {
  sale: 'Price, fees and transport',
  recon: 'Recon',
  curtailment: 'Curtailment, if it is still unsold',
};

function byWords({ what, date }: CashDue): string {
  if (date !== undefined) return sayDate(date);
  return what === 'recon' ? 'when it is in the shop' : 'the venue’s deadline';
}

function saleDates(facts: LotFacts, { venueOf }: PricingContext) {
  const venue = venueOf(facts);
  if (venue === undefined || facts.close === undefined) return {};
  const date = dateIn(venue.zone, facts.close.instant);
  return { date, ...(venue.payWithinDays !== undefined && { payBy: addDays(date, venue.payWithinDays) }) };
}
