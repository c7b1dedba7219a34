import { useMemo } from 'preact/hooks';
import { appraise } from '../../src/domain/appraisal/appraise.ts';
import { riskAt } from '../../src/domain/risk/risk-at.ts';
import { pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { worksheetOf } from '../../src/domain/worksheet/worksheet-of.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
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
import { RetailPart } from './retail/retail-part.tsx';
import { RiskPart } from './risk/risk-part.tsx';
import { EarlierLives } from './sale/earlier-lives.tsx';
import { TitlePart } from './title/title-part.tsx';
import { useLotEdit } from './use-lot-edit.ts';
import { WorksheetHead } from './worksheet-head.tsx';
import './worksheet.css';

/** One lot: every input with its unit, and the max bid that follows from them, explained. */
export function WorksheetScreen({ id }: { id: string }) {
  const { lots, complete } = useWorkspace();
  const lot = lots.find((candidate) => candidate.id === id);
  if (lot !== undefined) return <Worksheet key={lot.id} lot={lot} />;
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
  const earlier = useEarlierLives(lot);
  const { facts, addedAt } = lot;
  const context = useMemo(() => pricingContext(setup), [setup]);
  const appraisal = useMemo(() => appraise(facts, setup, { now: addedAt, earlier }), [facts, setup, addedAt, earlier]);
  const outcome = useMemo(() => worksheetOf(facts, context, appraisal), [facts, context, appraisal]);
  const sheet = outcome.ok ? outcome.value : undefined;
  const risk = useMemo(
    () =>
      sheet?.appraisal.risk === undefined || sheet.result.maxBid === null
        ? undefined
        : riskAt(sheet.deal, sheet.result.maxBid, sheet.appraisal.risk),
    [sheet],
  );
  return (
    <article class="worksheet">
      <WorksheetHead lot={lot} sheet={outcome} now={now} />
      <div class="worksheet-body">
        <div class="stack loose">
          <EarlierLives lot={lot} />
          <ContradictionsNote contradictions={appraisal.contradictions} />
          {sheet ? (
            <>
              <WhyThisNumber sheet={sheet} checks={appraisal.checks} risk={risk} priceNow={facts.priceNow} />
              <Walk sheet={sheet} />
            </>
          ) : (
            !outcome.ok && <Incomplete facts={facts} problems={outcome.problems} edit={edit} />
          )}
          <div class="folds">
            <RetailPart lot={lot} edit={edit} appraisal={appraisal} now={now} />
            <ClaimsPart
              lot={lot}
              edit={edit}
              appraisal={appraisal}
              context={context}
              maxBid={sheet?.result.maxBid ?? null}
            />
            {sheet && (
              <>
                <RiskPart sheet={sheet} risk={risk} priceNow={facts.priceNow} />
                <WhatMatters facts={facts} context={context} sheet={sheet} />
                <TitlePart facts={facts} context={context} sheet={sheet} />
                <DaysPart context={context} sheet={sheet} appraisal={appraisal} />
                <PriceSteps result={sheet.result} />
              </>
            )}
          </div>
          <div class="folds">
            <CallsPart lot={lot} stop={outcome.ok ? outcome.value.result.maxBid : null} now={now} />
          </div>
          <History lot={lot} />
        </div>
        <LotInputs lot={lot} edit={edit} />
      </div>
    </article>
  );
}
