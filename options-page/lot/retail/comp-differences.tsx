import { useState } from 'preact/hooks';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { CompDifference } from '../../../src/domain/retail/comp.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import type { CompDraft } from './comp-draft.ts';

export interface CompDifferencesProps {
  readonly name: string;
  readonly comp: CompDraft;
  readonly onChange: (comp: CompDraft) => void;
}

/** What the comparable has or lacks beside this lot, in dollars, and whether it counts at all. */
export function CompDifferences({ name, comp, onChange }: CompDifferencesProps) {
  const [adding, setAdding] = useState(false);
  const { differences } = comp;
  const put = (next: CompDifference[]) => onChange({ ...comp, differences: next });
  return (
    <details>
      <summary class="small">
        {comp.leftOut && <strong>Left out. </strong>}
        {differences.length === 0 ? 'No spec difference' : differences.map(differenceWords).join('; ')}
      </summary>
      <div class="stack comp-open">
        {differences.map((difference, i) => (
          <div key={`${i}-${difference.label}`} class="comp-difference">
            <TextInput
              label={`${name}, difference ${i + 1}`}
              value={difference.label}
              longest={80}
              required
              onCommit={(label) => label !== undefined && put(replaceAt(differences, i, { ...difference, label }))}
            />
            <MoneyInput
              label="Added to its price"
              value={difference.cents}
              signed
              required
              onCommit={(amount = ZERO) => put(replaceAt(differences, i, { ...difference, cents: amount }))}
            />
            <button
              type="button"
              class="plain"
              aria-label={`Remove the difference ${difference.label}`}
              onClick={() => put(removeAt(differences, i))}
            >
              Remove
            </button>
          </div>
        ))}
        {adding ? (
          <TextInput
            label={`${name}: what does this lot have that it lacks, or the other way around?`}
            value={undefined}
            longest={80}
            placeholder="Tow package"
            onCommit={(label) => {
              setAdding(false);
              if (label !== undefined) put([...differences, { label, cents: ZERO }]);
            }}
          />
        ) : (
          <div class="row apart">
            <button
              type="button"
              onClick={() => setAdding(true)}
              aria-label={`Add a difference to ${name.toLowerCase()}`}
            >
              Add a difference
            </button>
            <CheckInput
              label={`${name} counts`}
              value={!comp.leftOut}
              onCommit={(counts) => onChange({ ...comp, leftOut: !counts })}
            />
          </div>
        )}
        <p class="quiet small">Plus for what this lot has and it lacks, minus the other way around.</p>
      </div>
    </details>
  );
}

const differenceWords = ({ label, cents }: CompDifference): string =>
  `${label} ${formatMoney(cents, { sign: 'always' })}`;
