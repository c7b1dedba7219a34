import { REASON_WORDS } from '../../src/domain/dispute/reason-words.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { sayWhen } from '../../src/domain/time/say-time.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { LotsApartNote } from '../../src/ui/lots-apart-note.tsx';
import { usePageSubject } from '../../src/ui/page-subject.ts';
import { StillReading } from '../../src/ui/still-reading.tsx';
import { TermLink } from '../../src/ui/term-link.tsx';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';
import { Changes } from './changes.tsx';
import { DuesPart } from './dues-part.tsx';
import { EndForm } from './end-form.tsx';
import { EndedNote } from './ended-note.tsx';
import { NeedsPart } from './needs-part.tsx';
import { SameCase } from './same-case.tsx';
import { StepForm } from './step-form.tsx';
import { TimeLine } from './time-line.tsx';
import { useDisputes } from './use-disputes.ts';
import './disputes.css';

/** One dispute: what is to be done until when, what is missing, what was said and done, and how it ends. */
export function DisputeScreen({ id }: { id: string }) {
  const found = useDisputes();
  if (found === null) return <StillReading title="Dispute" words="Reading the dispute…" />;
  const shown = found.disputes.find(({ dispute }) => dispute.entry === id);
  if (shown !== undefined) return <OneDispute key={id} shown={shown} />;
  return (
    <section class="stack">
      <LotsApartNote lots={found.apart} />
      <h1>This dispute is not here</h1>
      <p>It was undone, or the address is from another browser.</p>
      <p>
        <a href="#/disputes">To the disputes</a>
      </p>
    </section>
  );
}

function OneDispute({ shown }: { shown: ShownDispute }) {
  const now = instant(Math.floor(useNow(15_000) / MINUTE) * MINUTE);
  const { lot, dispute, place } = shown;
  usePageSubject(lotTitle(lot.facts));
  const { outcome } = dispute;
  return (
    <article class="stack loose">
      <header class="won-head">
        <div>
          <h1>{REASON_WORDS[dispute.reason]}</h1>
          <p>
            <a href={`#/won/${lot.id}`}>{lotTitle(lot.facts)}</a>
            <span class="quiet">
              {' '}
              {[place.name, lot.facts.lotNumber && `lot ${lot.facts.lotNumber}`, lot.facts.vin]
                .filter(Boolean)
                .join(' · ')}
            </span>
          </p>
          <p class="quiet">
            {dispute.side === 'ours' ? 'Our claim' : 'Claim against us'}, opened {sayWhen(dispute.at, now)} ·{' '}
            <a class="no-print" href={`#/history/${lot.id}`}>
              The lot’s full history
            </a>
          </p>
        </div>
        <div class="row">
          {dispute.askedCents !== undefined && (
            <div>
              <div class="small quiet">
                <TermLink term="dispute">Amount claimed</TermLink>
              </div>
              <div class="figure">{formatMoney(dispute.askedCents)}</div>
            </div>
          )}
          <button type="button" class="no-print" onClick={() => print()}>
            Print
          </button>
        </div>
      </header>
      <SameCase lot={lot} dispute={dispute} now={now} />
      <p class="dispute-words">{dispute.words}</p>
      {outcome === undefined ? (
        <>
          <DuesPart shown={shown} now={now} />
          <NeedsPart shown={shown} />
        </>
      ) : (
        <EndedNote lot={lot} dispute={dispute} outcome={outcome} />
      )}
      <TimeLine shown={shown} />
      {outcome === undefined && (
        <div class="dispute-forms no-print">
          <StepForm shown={shown} />
          <EndForm shown={shown} />
          <Changes shown={shown} />
        </div>
      )}
    </article>
  );
}
