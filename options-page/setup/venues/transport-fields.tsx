import { cents, ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { TransportRule } from '../../../src/domain/setup/venue.ts';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';
import { transportCost } from './transport-cost.ts';

export interface TransportFieldsProps {
  readonly transport: TransportRule;
  readonly onChange: (transport: TransportRule) => void;
}

const KINDS = [
  { value: 'flat', label: 'One price per car' },
  { value: 'per-mile', label: 'By the mile' },
] as const;

/** What it costs to bring a car home, unless its lot has a quote. */
export function TransportFields({ transport, onChange }: TransportFieldsProps) {
  return (
    <fieldset class="stack">
      <legend>Transport to the store</legend>
      <RadioChoice
        legend="Priced"
        value={transport.kind}
        choices={KINDS}
        onCommit={(kind) => onChange(startOf(kind, transport))}
      />
      {transport.kind === 'flat' ? (
        <div class="fields">
          <MoneyInput
            label="Price per car"
            value={transport.cents}
            required
            hint="A lot’s own quote overrides it"
            onCommit={(amount = ZERO) => onChange({ ...transport, cents: amount })}
          />
        </div>
      ) : (
        <>
          <div class="fields">
            <NumberInput
              label="Road miles to the store"
              value={transport.miles}
              least={0}
              most={10_000}
              unit="mi"
              required
              onCommit={(miles = 0) => onChange({ ...transport, miles })}
            />
            <MoneyInput
              label="Price per mile"
              value={transport.centsPerMile}
              required
              onCommit={(centsPerMile = ZERO) => onChange({ ...transport, centsPerMile })}
            />
            <MoneyInput
              label="At least"
              value={transport.minimumCents}
              required
              onCommit={(minimumCents = ZERO) => onChange({ ...transport, minimumCents })}
            />
          </div>
          <p class="small">A car from here comes to {formatMoney(transportCost(transport))}.</p>
        </>
      )}
    </fieldset>
  );
}

/** The other way of pricing, starting from what the old one came to. */
function startOf(kind: TransportRule['kind'], old: TransportRule): TransportRule {
  if (kind === old.kind) return old;
  if (kind === 'flat') return { kind, cents: transportCost(old) };
  return { kind, miles: 0, centsPerMile: cents(85), minimumCents: transportCost(old) };
}
