import { ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { SaleLogPart } from '../sale/sale-log.tsx';
import type { LotEdit } from '../use-lot-edit.ts';
import { CarInputs } from './car-inputs.tsx';
import { EstimateInputs } from './estimate-inputs.tsx';
import { NotesInput } from './notes-input.tsx';
import { PayingInputs } from './paying-inputs.tsx';
import { ReconInputs } from './recon-inputs.tsx';
import { SaleInputs } from './sale-inputs.tsx';

/** Everything about a lot that is a plain figure or a word, in the order in which a buyer knows it. */
export function LotInputs({ lot, edit }: { lot: LotState; edit: LotEdit }) {
  const { setup } = useWorkspace();
  const standingRecon = setup.costs.reconCents;
  return (
    <div class="worksheet-inputs no-print">
      <fieldset class="stack">
        <legend>Your retail estimate</legend>
        <EstimateInputs
          narrow
          value={lot.facts.retail}
          likelyHint="With a clean title, as the car really is"
          onCommit={(retail) => edit.commit('retail', retail, 'Retail estimate saved.')}
        />
        <p class="quiet small">Low and high: 1 in 10 below, 1 in 10 above.</p>
      </fieldset>
      <SaleLogPart lot={lot} />
      <SaleInputs lot={lot} edit={edit} />
      <PayingInputs lot={lot} edit={edit} />
      <fieldset class="stack">
        <legend>Recon</legend>
        <ReconInputs
          lines={lot.facts.recon ?? []}
          standing={
            standingRecon > ZERO
              ? `Setup’s standard amount of ${formatMoney(standingRecon)} is used.`
              : 'nothing is counted.'
          }
          onCommit={(lines) => edit.commit('recon', lines, 'Recon saved.')}
        />
      </fieldset>
      <CarInputs lot={lot} edit={edit} />
      <NotesInput lot={lot} edit={edit} />
    </div>
  );
}
