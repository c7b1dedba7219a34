import type { Charge } from '../../../src/domain/fees/fee-schedule.ts';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { FaultsAt } from '../faults-at.tsx';

export interface ChargesFieldsProps {
  readonly charges: readonly Charge[];
  readonly path: readonly PropertyKey[];
  /** `what` begins the sentence that is said: "Added a charge". */
  readonly onChange: (charges: Charge[], what: string) => void;
}

/** Charges that are the same at every price. */
export function ChargesFields({ charges, path, onChange }: ChargesFieldsProps) {
  const [root, focusNext] = useFocusNext<HTMLFieldSetElement>();
  return (
    <fieldset class="stack" ref={root}>
      <legend>Charges that are the same at every price</legend>
      {charges.length === 0 && <p class="quiet small">None. A gate pass or a document fee would go here.</p>}
      {charges.map((charge, index) => (
        <fieldset key={index} class="stack" data-focus={`charge-${index}`}>
          <legend class="visually-hidden">{charge.label || 'New charge'}</legend>
          <div class="row setup-foot">
            <TextInput
              label="For"
              value={charge.label === '' ? undefined : charge.label}
              longest={80}
              required
              placeholder="Gate pass"
              onCommit={(label = '') => onChange(replaceAt(charges, index, { ...charge, label }), 'Changed a charge')}
            />
            <MoneyInput
              label="Amount"
              value={charge.cents}
              required
              onCommit={(amount = ZERO) =>
                onChange(replaceAt(charges, index, { ...charge, cents: amount }), 'Changed a charge')
              }
            />
            <button
              type="button"
              class="plain"
              aria-label={`Remove ${charge.label || 'the new charge'}`}
              onClick={() => {
                focusNext(index < charges.length - 1 ? `charge-${index}` : 'add');
                onChange(removeAt(charges, index), 'Removed a charge');
              }}
            >
              Remove
            </button>
          </div>
          <FaultsAt path={[...path, index]} />
        </fieldset>
      ))}
      <p data-focus="add">
        <button
          type="button"
          onClick={() => {
            focusNext(`charge-${charges.length}`);
            onChange([...charges, { label: '', cents: ZERO }], 'Added a charge');
          }}
        >
          Add a charge
        </button>
      </p>
    </fieldset>
  );
}
