import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { wholeSheet } from '../../src/domain/worksheet/whole-sheet.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { Contained } from '../../src/ui/contained.tsx';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { usePageSubject } from '../../src/ui/page-subject.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { PriceSteps } from './answer/price-steps.tsx';
import { Walk } from './answer/walk.tsx';
import { WhatMatters } from './answer/what-matters.tsx';
import { WhyThisNumber } from './answer/why-this-number.tsx';
import { CallsPart } from './calls/calls-part.tsx';
import { ClaimsPart } from './claims/claims-part.tsx';
import { ContradictionsNote } from './claims/contradictions-note.tsx';
import { useEarlierLives } from './claims/use-earlier-lives.ts';
import { DaysPart } from './days/days-part.tsx';
import { History } from './history.tsx';
import { Incomplete } from './incomplete.tsx';
import { LotInputs } from './inputs/lot-inputs.tsx';
import { LotSteps } from './lot-steps.tsx';
import { RetailPart } from './retail/retail-part.tsx';
import { RiskPart } from './risk/risk-part.tsx';
import { EarlierLives } from './sale/earlier-lives.tsx';
import { TitlePart } from './title/title-part.tsx';
import { useLotEdit } from './use-lot-edit.ts';
import { WorksheetHead } from './worksheet-head.tsx';
import { WorksheetStop } from './worksheet-stop.tsx';
import './worksheet.css';

/** One lot: every input with its unit, and the max bid that follows from them, explained. */
export function WorksheetScreen({ id }: { id: string }) {
  const { lots, complete } = useWorkspace();
  const lot = lots.find((candidate) => candidate.id === id);
  if (lot !== undefined)
    return (
      <>
        <LotSteps id={lot.id} />
        <Worksheet key={lot.id} lot={lot} />
      </>
    );
  if (!complete) return <p role="status">Reading your lots…</p>;
  return (
    <section class="stack">
      <h1>This lot is not on the list</h1>
      <p>It may have been removed, or the address is from another browser.</p>
      <p>
        <a href="#/lots">Back to the lots</a>
      </p>
    </section>
  );
}

/** The answer first and in the fewest words; then each part with what it comes to, opened when it is asked for. */
function Worksheet({ lot }: { lot: LotState }) {
  const { setup } = useWorkspace();
  const now = useNow(1000);
  const edit = useLotEdit(lot);
  usePageSubject(lotTitle(lot.facts));
  const earlier = useEarlierLives(lot);
  const { facts, addedAt } = lot;
  const context = useMemo(() => pricingContext(setup), [setup]);
  const { appraisal, outcome, risk } = useMemo(
    () => wholeSheet(facts, context, { now: addedAt, earlier }),
    [facts, context, addedAt, earlier],
  );
  const sheet = outcome.ok ? outcome.value : undefined;
  const part = (what: string, children: ComponentChildren) => (
    <Contained what={what} of={outcome}>
      {children}
    </Contained>
  );
  return (
    <article class="worksheet">
      <WorksheetHead lot={lot} sheet={outcome} now={now} />
      <WorksheetStop lot={lot} sheet={outcome} now={now} />
      <div class="worksheet-body">
        <div class="stack loose">
          {part('What this car was before', <EarlierLives lot={lot} />)}
          <ContradictionsNote contradictions={appraisal.contradictions} />
          {sheet &&
            part(
              'Why it is this number',
              <WhyThisNumber sheet={sheet} checks={appraisal.checks} risk={risk} priceNow={facts.priceNow} />,
            )}
          {sheet && part('The way from retail to the max bid', <Walk sheet={sheet} />)}
          {!outcome.ok && <Incomplete facts={facts} context={context} problems={outcome.problems} edit={edit} />}
          <div class="folds">
            {part('Retail', <RetailPart lot={lot} edit={edit} appraisal={appraisal} now={now} />)}
            {part(
              'Doubts',
              <ClaimsPart
                lot={lot}
                edit={edit}
                appraisal={appraisal}
                context={context}
                maxBid={sheet?.result.maxBid ?? null}
              />,
            )}
            {sheet && (
              <>
                {part('Risk', <RiskPart sheet={sheet} risk={risk} priceNow={facts.priceNow} />)}
                {part('What matters most', <WhatMatters facts={facts} context={context} sheet={sheet} />)}
                {part('Title and cash', <TitlePart facts={facts} context={context} sheet={sheet} />)}
                {part('Days to sell', <DaysPart context={context} sheet={sheet} appraisal={appraisal} />)}
                {part('Price steps', <PriceSteps result={sheet.result} />)}
              </>
            )}
          </div>
          <div class="folds">{part('Reminders', <CallsPart lot={lot} now={now} />)}</div>
          {part('What happened to this lot', <History lot={lot} />)}
        </div>
        {part('What is known of this lot', <LotInputs lot={lot} edit={edit} now={now} />)}
      </div>
    </article>
  );
}
