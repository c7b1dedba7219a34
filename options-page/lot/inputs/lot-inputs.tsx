import type { ComponentChildren } from 'preact';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { ReconTemplate } from '../../../src/domain/setup/recon-template.ts';
import type { Instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { Contained } from '../../../src/ui/contained.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { offerRecon } from '../../../src/views/lots/recon-offers.ts';
import { SaleLogPart } from '../sale/sale-log.tsx';
import type { LotEdit } from '../use-lot-edit.ts';
import { CarInputs } from './car-inputs.tsx';
import { EstimateInputs } from './estimate-inputs.tsx';
import { NotesInput } from './notes-input.tsx';
import { PayingInputs } from './paying-inputs.tsx';
import { ReconInputs } from './recon-inputs.tsx';
import { ReconTemplates } from './recon-templates.tsx';
import { SaleInputs } from './sale-inputs.tsx';

interface LotInputsProps {
  readonly lot: LotState;
  readonly edit: LotEdit;
  readonly now: Instant;
}

/** Everything about a lot that is a plain figure or a word, in the order of the work: the car first, its result last. */
export function LotInputs({ lot, edit, now }: LotInputsProps) {
  const part = (what: string, children: ComponentChildren) => (
    <Contained what={what} of={lot}>
      {children}
    </Contained>
  );
  return (
    <div class="worksheet-inputs no-print">
      {part('The car', <CarInputs lot={lot} edit={edit} />)}
      {part('The sale', <SaleInputs lot={lot} edit={edit} />)}
      {part('Your retail estimate', <GuessInputs lot={lot} edit={edit} />)}
      {part('Recon', <ReconPart lot={lot} edit={edit} />)}
      {part('Title and money', <PayingInputs lot={lot} edit={edit} />)}
      {part('Notes', <NotesInput lot={lot} edit={edit} />)}
      {part('At the sale', <SaleLogPart lot={lot} now={now} />)}
    </div>
  );
}

function GuessInputs({ lot, edit }: Omit<LotInputsProps, 'now'>) {
  return (
    <fieldset class="stack">
      <legend>Your retail estimate</legend>
      <EstimateInputs
        narrow
        priceOf="retail"
        value={lot.facts.retail}
        likelyHint="With a clean title, as the car really is"
        onCommit={(retail) => edit.commit('retail', retail, 'Retail estimate saved.')}
      />
      <p class="quiet small">Low and high: 1 in 10 below, 1 in 10 above.</p>
    </fieldset>
  );
}

function ReconPart({ lot, edit }: Omit<LotInputsProps, 'now'>) {
  const { setup, say } = useWorkspace();
  const { reconCents } = setup.costs;
  const add = (template: ReconTemplate) => {
    const { changed, said } = offerRecon([lot], template);
    const [own] = changed;
    if (own === undefined) say(`${template.name}: ${said}`);
    else edit.commit('recon', own.recon, `${template.name}: ${said}`);
  };
  return (
    <fieldset class="stack">
      <legend>Recon</legend>
      <ReconInputs
        lines={lot.facts.recon ?? []}
        standing={
          reconCents > ZERO ? `Setup’s standard amount of ${formatMoney(reconCents)} is used.` : 'nothing is counted.'
        }
        onCommit={(lines) => edit.commit('recon', lines, 'Recon saved.')}
      />
      <ReconTemplates cars={[lot.facts]} onChoose={add} />
    </fieldset>
  );
}
