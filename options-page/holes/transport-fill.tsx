import { type Cents, ZERO } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { withTransport } from '../../src/domain/setup/fill-hole.ts';
import type { Venue } from '../../src/domain/setup/venue.ts';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import type { FillProps } from './fill.ts';

/** Asks what it costs to bring a car home from a venue. */
export function TransportFill({ venue, setup, onFill }: FillProps & { readonly venue: Venue }) {
  const save = (amount: Cents) =>
    onFill(
      { venues: setup.venues.map((one) => (one.id === venue.id ? withTransport(one, amount) : one)) },
      amount === ZERO
        ? `Delivery from ${venue.name} is free.`
        : `Transport from ${venue.name}: ${formatMoney(amount)}.`,
    );
  return (
    <div class="stack">
      <MoneyInput
        label={`Transport from ${venue.name}, per car`}
        value={undefined}
        hint="By the mile instead? Set it under Setup › Venues. A quote for this car alone goes on its worksheet."
        onCommit={(amount) => amount !== undefined && save(amount)}
      />
      <p>
        <button type="button" class="plain" onClick={() => save(ZERO)}>
          Delivery is free
        </button>
      </p>
    </div>
  );
}
