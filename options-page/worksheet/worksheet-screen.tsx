import { useMemo } from 'preact/hooks';
import { pricingContext } from '../../src/domain/bid/pricing-context.ts';
import { worksheetOf } from '../../src/domain/bid/worksheet-of.ts';
import { ZERO } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { LotState } from '../../src/journal/lot-state.ts';
import { useNow } from '../../src/ui/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { CarInputs } from './car-inputs.tsx';
import { Curve } from './curve.tsx';
import { EstimateInputs } from './estimate-inputs.tsx';
import { History } from './history.tsx';
import { Incomplete } from './incomplete.tsx';
import { NotesInput } from './notes-input.tsx';
import { PayingInputs } from './paying-inputs.tsx';
import { PriceSteps } from './price-steps.tsx';
import { ReconInputs } from './recon-inputs.tsx';
import { SaleInputs } from './sale-inputs.tsx';
import { useLotEdit } from './use-lot-edit.ts';
import { Walk } from './walk.tsx';
import { WhatMatters } from './what-matters.tsx';
import { WhyThisNumber } from './why-this-number.tsx';
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
      <p>It may have been dropped, or the address is from another browser.</p>
      <p>
        <a href="#/lots">Back to the lots</a>
      </p>
    </section>
  );
}

function Worksheet({ lot }: { lot: LotState }) {
  const { setup } = useWorkspace();
  const now = useNow(1000);
  const edit = useLotEdit(lot);
  const context = useMemo(() => pricingContext(setup), [setup]);
  const sheet = useMemo(() => worksheetOf(lot.facts, context), [lot.facts, context]);
  const standingRecon = setup.costs.reconCents;
  return (
    <article class="worksheet">
      <WorksheetHead lot={lot} sheet={sheet} now={now} />
      <div class="worksheet-body">
        <div class="stack loose">
          {sheet.ok ? (
            <>
              <WhyThisNumber sheet={sheet.value} priceNow={lot.facts.priceNow} />
              <Walk deal={sheet.value.deal} result={sheet.value.result} />
              <Curve deal={sheet.value.deal} result={sheet.value.result} priceNow={lot.facts.priceNow} />
              <PriceSteps result={sheet.value.result} />
              <WhatMatters deal={sheet.value.deal} riskCapOf={sheet.value.riskCapOf} />
            </>
          ) : (
            <Incomplete problems={sheet.problems} />
          )}
          <History lot={lot} />
        </div>
        <div class="worksheet-inputs no-print">
          <fieldset class="stack">
            <legend>What it will retail for</legend>
            <EstimateInputs
              value={lot.facts.retail}
              likelyHint="With a clean title, as the car really is"
              onCommit={(retail) => edit.commit('retail', retail, 'The retail figure is kept.')}
            />
          </fieldset>
          <fieldset class="stack">
            <legend>Recon</legend>
            <ReconInputs
              lines={lot.facts.recon ?? []}
              standing={
                standingRecon > ZERO
                  ? `Setup’s standing amount of ${formatMoney(standingRecon)} is taken.`
                  : 'nothing is counted.'
              }
              onCommit={(lines) => edit.commit('recon', lines, 'The recon is kept.')}
            />
          </fieldset>
          <SaleInputs lot={lot} edit={edit} />
          <PayingInputs lot={lot} edit={edit} />
          <CarInputs lot={lot} edit={edit} />
          <NotesInput lot={lot} edit={edit} />
        </div>
      </div>
    </article>
  );
}
