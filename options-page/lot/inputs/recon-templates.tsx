import { useState } from 'preact/hooks';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { type ReconTemplate, templatesFor } from '../../../src/domain/setup/recon-template.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { templateSum } from '../../../src/views/lots/recon-offers.ts';

interface ReconTemplatesProps {
  readonly cars: readonly LotFacts[];
  readonly onChoose: (template: ReconTemplate) => void;
}

/** The setup's templates as buttons, those for all of the cars first; the others are folded away behind them. */
export function ReconTemplates({ cars, onChoose }: ReconTemplatesProps) {
  const { reconTemplates = [] } = useWorkspace().setup;
  const [open, setOpen] = useState(false);
  const offered = templatesFor(reconTemplates, cars);
  const fitting = offered.filter(({ fits }) => fits);
  const others = offered.filter(({ fits }) => !fits);
  if (offered.length === 0)
    return (
      <p class="small">
        <a href="#/setup/recon">Make a template for a class of car</a>
      </p>
    );
  const buttons = (list: typeof offered) => (
    <div class="row">
      {list.map(({ template }) => (
        <button key={template.id} type="button" title={template.carClass} onClick={() => onChoose(template)}>
          {template.name}, {templateSum(template)}
        </button>
      ))}
    </div>
  );
  return (
    <div class="stack" role="group" aria-label="Add from a template">
      <p class="small quiet">Add from a template. Lines that are there stay as they are.</p>
      {fitting.length > 0 && buttons(fitting)}
      {fitting.length > 0 && others.length > 0 ? (
        <details onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary class="small">Templates for other cars ({others.length})</summary>
          {open && buttons(others)}
        </details>
      ) : (
        others.length > 0 && buttons(others)
      )}
    </div>
  );
}
