import { useState } from 'preact/hooks';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { parseMoney } from '../../../src/domain/money/parse-money.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import type { ReconTemplate } from '../../../src/domain/setup/recon-template.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { offerRecon } from '../../../src/views/lots/recon-offers.ts';
import { ReconTemplates } from '../../lot/inputs/recon-templates.tsx';
import { useManyLots } from './use-many-lots.ts';

interface ReconForAllProps {
  readonly lots: readonly LotState[];
  readonly onDone: () => void;
}

const LONGEST = 80;

/** Recon for all of them, beside the lines that they have: from a template, or one line that is typed. */
export function ReconForAll({ lots, onDone }: ReconForAllProps) {
  const { setEach } = useManyLots();
  const { say } = useWorkspace();
  const addFrom = async (template: ReconTemplate) => {
    const { changed, said } = offerRecon(lots, template);
    if (changed.length === 0) return say(`${template.name}: ${said}`);
    const sets = changed.map(({ lot, recon }) => ({ lot, facts: { recon } }));
    if (await setEach(sets, `${template.name}: ${said}`)) onDone();
  };
  return (
    <div class="bulk-panel stack">
      <ReconTemplates cars={lots.map(({ facts }) => facts)} onChoose={addFrom} />
      <OneLine lots={lots} onDone={onDone} />
    </div>
  );
}

/** One more recon line on all of them. */
function OneLine({ lots, onDone }: ReconForAllProps) {
  const { set } = useManyLots();
  const [label, setLabel] = useState('');
  const [amount, setAmount] = useState('');
  const [fault, setFault] = useState<string>();
  const add = async () => {
    const what = label.trim();
    const read = parseMoney(amount);
    if (what === '') return setFault('Enter what needs doing.');
    if (!read.ok) return setFault(amount.trim() === '' ? 'Enter what it costs.' : read.message);
    if (read.value < 0) return setFault('This can’t be below $0.');
    const line = { label: what, amount: { likely: read.value }, chance: ppm(PPM) };
    const facts = (lot: LotState) => ({ recon: [...(lot.facts.recon ?? []), line] });
    if (await set(lots, facts, `${what}, ${formatMoney(read.value)}, added to recon.`)) onDone();
  };
  return (
    <form
      class="row bulk-line"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <label class="field">
        <span class="label">What needs doing?</span>
        <input value={label} maxLength={LONGEST} onInput={(event) => setLabel(event.currentTarget.value)} />
      </label>
      <label class="field">
        <span class="label">Likely cost, each</span>
        <input
          class="number"
          inputMode="decimal"
          autoComplete="off"
          value={amount}
          onInput={(event) => setAmount(event.currentTarget.value)}
        />
      </label>
      <button type="submit">Add to all</button>
      {fault !== undefined && (
        <span class="fault" role="alert">
          {fault}
        </span>
      )}
    </form>
  );
}
