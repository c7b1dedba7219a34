import { ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import type { AppliedCeiling, Ceiling } from '../../../src/domain/retail/ceiling.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { withField } from '../../../src/ui/tables/list-edit.ts';
import type { CeilingDraft } from './ceilings.tsx';

const KINDS: readonly { readonly value: Ceiling['kind']; readonly label: string }[] = [
  { value: 'new', label: 'A new one' },
  { value: 'plainer', label: 'A plainer one' },
  { value: 'in-stock', label: 'One in stock' },
  { value: 'other', label: 'Something else' },
];

export interface CeilingFieldsProps {
  readonly index: number;
  readonly ceiling: CeilingDraft;
  readonly applied: AppliedCeiling | undefined;
  readonly onChange: (ceiling: CeilingDraft) => void;
  readonly onRemove: () => void;
}

/** One substitute, and how its price becomes a cap. */
export function CeilingFields({ index, ceiling, applied, onChange, onRemove }: CeilingFieldsProps) {
  const { label } = ceiling;
  return (
    <fieldset class="recon-line" data-focus={`ceiling-${index}`}>
      <legend class="visually-hidden">Substitute: {label}</legend>
      <div class="fields">
        <div class="two">
          <TextInput
            label="What"
            value={label}
            longest={80}
            required
            onCommit={(text) => text !== undefined && onChange({ ...ceiling, label: text })}
          />
        </div>
        <ChoiceInput
          label="Type"
          value={ceiling.kind}
          choices={KINDS}
          onCommit={(kind) =>
            onChange({ ...ceiling, kind: KINDS.find(({ value }) => value === kind)?.value ?? 'other' })
          }
        />
        <MoneyInput
          label="List or asking price"
          value={ceiling.list}
          required={applied !== undefined}
          onCommit={(list) => onChange(withField(ceiling, 'list', list))}
        />
        <RateInput
          label="Usual discount off list"
          value={ceiling.markup === 0 ? undefined : ceiling.markup}
          hint="10% on a slow-selling new one"
          onCommit={(markup = ppm(0)) => onChange({ ...ceiling, markup })}
        />
        <MoneyInput
          label="Rebate"
          value={ceiling.rebate === 0 ? undefined : ceiling.rebate}
          onCommit={(rebate = ZERO) => onChange({ ...ceiling, rebate })}
        />
        <MoneyInput
          label="Must be cheaper by"
          value={ceiling.cheaperBy === 0 ? undefined : ceiling.cheaperBy}
          signed
          hint="Negative if this lot can cost more"
          onCommit={(cheaperBy = ZERO) => onChange({ ...ceiling, cheaperBy })}
        />
        <NumberInput
          label="On your own lot"
          value={ceiling.inStock === 0 ? undefined : ceiling.inStock}
          least={0}
          most={99}
          unit="cars"
          hint="Each slows the next sale"
          onCommit={(inStock = 0) => onChange({ ...ceiling, inStock })}
        />
      </div>
      <div class="row apart">
        <p>{applied === undefined ? <span class="missing">no price yet</span> : capWords(applied)}</p>
        <button type="button" class="plain" aria-label={`Remove the substitute ${label}`} onClick={onRemove}>
          Remove
        </button>
      </div>
    </fieldset>
  );
}

/** "$245,000 − $24,500 markup − $20,000 rebate = $200,500". */
function capWords({ ceiling, steps, cap, lowest }: AppliedCeiling) {
  const steps_ = steps.map(({ label, cents }) =>
    cents < 0
      ? ` + ${formatMoney(-cents as typeof cents)} ${label.toLowerCase()}`
      : ` − ${formatMoney(cents)} ${label.toLowerCase()}`,
  );
  return (
    <>
      {formatMoney(ceiling.list)}
      {steps_.join('')} = <strong>{formatMoney(cap)}</strong>
      {lowest ? ', the lowest, so it is the cap.' : ''}
    </>
  );
}
