import { cents, ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { withTransport } from '../../../src/domain/setup/fill-hole.ts';
import { isTransportUnsaid, transportCost } from '../../../src/domain/setup/transport-cost.ts';
import type { TransportRule, Venue } from '../../../src/domain/setup/venue.ts';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { RadioChoice } from '../../../src/ui/inputs/radio-choice.tsx';

export interface TransportFieldsProps {
  readonly venue: Venue;
  readonly onChange: (venue: Venue) => void;
}

const KINDS = [
  { value: 'flat', label: 'One price per car' },
  { value: 'per-mile', label: 'By the mile' },
] as const;

/** What it costs to bring a car home, unless its lot has a quote. */
export function TransportFields({ venue, onChange: onChangeVenue }: TransportFieldsProps) {
  const { transport } = venue;
  const onChange = (next: TransportRule) =>
    onChangeVenue(next.kind === 'flat' ? withTransport(venue, next.cents) : { ...withoutFree(venue), transport: next });
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
            value={isTransportUnsaid(venue) ? undefined : transport.cents}
            required
            hint="0 says that delivery is free. A lot’s own quote overrides it"
            onCommit={(amount) => amount !== undefined && onChange({ ...transport, cents: amount })}
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

function withoutFree({ noTransport: _, ...venue }: Venue): Venue {
  return venue;
}

/** The other way of pricing, starting from what the old one came to. */
function startOf(kind: TransportRule['kind'], old: TransportRule): TransportRule {
  if (kind === old.kind) return old;
  if (kind === 'flat') return { kind, cents: transportCost(old) };
  return { kind, miles: 0, centsPerMile: cents(85), minimumCents: transportCost(old) };
}
