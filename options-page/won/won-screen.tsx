import { useMemo, useState } from 'preact/hooks';
import { STEP_TO_DO } from '../../src/domain/after-sale/to-do.ts';
import { claimWindows } from '../../src/domain/after-sale/win-standing.ts';
import { REASON_WORDS } from '../../src/domain/dispute/reason-words.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { WIN_STEPS } from '../../src/domain/setup/after-sale-rules.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { DueText, WhyDue } from '../../src/ui/after-sale/due-text.tsx';
import { useBookedLots } from '../../src/ui/hooks/use-booked-lots.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useOneLot } from '../../src/ui/hooks/use-one-lot.ts';
import { MomentInput } from '../../src/ui/inputs/moment-input.tsx';
import { usePageSubject } from '../../src/ui/page-subject.ts';
import { StillReading } from '../../src/ui/still-reading.tsx';
import { TermLink } from '../../src/ui/term-link.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { type AfterLot, afterLotsUnder } from '../../src/views/after-sale/after-lot.ts';
import { STANDING_TITLES, standingInWords } from '../../src/views/after-sale/standing-words.ts';
import type { TermId } from '../../src/views/words/glossary.ts';
import { LotDisputes } from './lot-disputes.tsx';
import { WonStep } from './won-step.tsx';
import '../todo/after-sale.css';

/** One lot after its sale: how sure it is, its money, each step with its date, until when claims can be made. */
export function WonScreen({ id }: { id: string }) {
  const { setup } = useWorkspace();
  const now = instant(Math.floor(useNow(15_000) / MINUTE) * MINUTE);
  const lot = useOneLot(id);
  const bookedOf = useBookedLots();
  const after = useMemo(
    () => (lot ? (bookedOf ? afterLotsUnder(setup, bookedOf, now)(lot) : undefined) : lot),
    [lot, setup, bookedOf, now],
  );
  if (after === undefined) return <StillReading title="After the sale" words="Reading the lot…" />;
  if (after === null) {
    return (
      <section class="stack">
        <h1>This lot is not here</h1>
        <p>Adding it was undone, or the address is from another browser.</p>
        <p>
          <a href="#/todo">Back to To do</a>
        </p>
      </section>
    );
  }
  return <Won after={after} now={now} />;
}

function Won({ after, now }: { after: AfterLot; now: Instant }) {
  const { setup } = useWorkspace();
  const { lot, place, money, standing, sold, toDos } = after;
  usePageSubject(lotTitle(lot.facts));
  const [at, setAt] = useState<Instant>();
  const when = () => at ?? instant(Date.now());
  const stands = standing !== undefined && standing.as !== 'undone';
  const refund = toDos.find(({ key }) => key === 'refund');
  return (
    <article class="stack loose">
      <header class="won-head">
        <div>
          <h1>{lotTitle(lot.facts)}</h1>
          <p class="quiet">
            {[place.name, lot.facts.lotNumber && `lot ${lot.facts.lotNumber}`, lot.facts.vin]
              .filter(Boolean)
              .join(' · ')}
          </p>
          <p class="no-print">
            <a href={`#/lot/${lot.id}`}>Worksheet</a> · <a href={`#/history/${lot.id}`}>Full history</a>
            {money && (
              <>
                {' · '}
                <a href={`#/books/${lot.id}`}>Purchase folder</a>
              </>
            )}
          </p>
        </div>
        {money && (
          <div class="money-open">
            <Figure term="hammer-price" label="Won at" words={formatMoney(money.hammer)} />
            <Figure
              term="buy-fee"
              label="Buy fees"
              words={money.fees === undefined ? 'not known' : formatMoney(money.fees)}
            />
            {money.billed !== undefined && (
              <Figure term="billed" label="Billed so far" words={formatMoney(money.billed)} />
            )}
            {money.settled !== 0 && (
              <Figure
                term="from-disputes"
                label="From disputes"
                words={formatMoney(money.settled, { sign: 'always' })}
              />
            )}
            <Figure term="paid" label="Paid" words={formatMoney(money.paid)} />
            {money.toComeBack > 0 ? (
              <Figure term="refund-due" label="Refund due" words={formatMoney(money.toComeBack)} />
            ) : (
              <Figure term="to-pay" label="To pay" words={formatMoney(money.toPay)} />
            )}
            {money.others > 0 && (
              <Figure term="owed-to-others" label="Owed to others" words={formatMoney(money.others)} />
            )}
          </div>
        )}
      </header>
      {standing && (
        <p class="note">
          <span class="strong">{STANDING_TITLES[standing.as]}.</span> {standingInWords(standing, setup.store.zone)}
        </p>
      )}
      {standing === undefined && <p>This lot was not won. Only its disputes are shown.</p>}
      {(stands || refund !== undefined) && (
        <section class="stack">
          <h2>After-sale steps</h2>
          {place.rules === undefined && (
            <p class="quiet small">
              Setup has no deadlines yet for {place.name} . <a href="#/setup/after">Copy them from its terms</a>, and
              the dates appear here.
            </p>
          )}
          <div class="fields no-print">
            <MomentInput
              label="When it was done"
              value={at}
              zone={setup.store.zone}
              onChange={setAt}
              hint="Leave blank for now"
            />
          </div>
          <ul class="won-steps">
            {stands &&
              WIN_STEPS.map((step) => (
                <WonStep key={step} step={step} title={STEP_TO_DO[step]} after={after} now={now} when={when} />
              ))}
            {(refund || sold.steps.refund) && (
              <WonStep step="refund" title="Get the refund" after={after} now={now} when={when} />
            )}
          </ul>
        </section>
      )}
      {stands && claimWindows(sold, place).length > 0 && (
        <section class="stack">
          <h2>Claim deadlines</h2>
          <ul class="won-steps">
            {claimWindows(sold, place).map(({ reason, due }) => (
              <li key={reason} class="won-step">
                <span class="strong">{REASON_WORDS[reason]}</span>
                <DueText due={due} now={now} place={place} />
                <span class="quiet small">
                  <WhyDue due={due} />
                </span>
                <span />
              </li>
            ))}
          </ul>
        </section>
      )}
      <LotDisputes lot={lot} />
    </article>
  );
}

function Figure({ term, label, words }: { term: TermId; label: string; words: string }) {
  return (
    <div>
      <div class="small quiet">
        <TermLink term={term}>{label}</TermLink>
      </div>
      <div class="figure">{words}</div>
    </div>
  );
}
