import { useState } from 'preact/hooks';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { ZoneInput } from '../../src/ui/inputs/zone-input.tsx';
import { FeeBox } from '../holes/fee-box.tsx';
import type { PartProps } from './part-props.ts';

/** One place that sells, with what it costs to buy there and to bring a car home. */
export function FirstVenue({ draft, put }: PartProps) {
  const [fees, setFees] = useState('');
  return (
    <fieldset class="stack">
      <legend>One venue you buy at</legend>
      <div class="fields">
        <TextInput
          label="Name of the venue"
          value={draft.venueName}
          longest={80}
          placeholder="Saltgrass, west yard"
          onCommit={(venueName) => put({ venueName })}
        />
        <ZoneInput
          label="Time zone of its sales"
          value={draft.venueZone}
          storeZone={draft.zone}
          onCommit={(venueZone) => put({ venueZone })}
        />
        <FeeBox
          venue="this venue"
          text={fees}
          onType={(text, bands) => {
            setFees(text);
            put({ bands });
          }}
        />
        <MoneyInput
          label="Transport, per car"
          value={draft.transport}
          hint="0 if delivery is free. By the mile: under Setup › Venues"
          onCommit={(transport) => put({ transport })}
        />
        <MoneyInput
          label="Bid increment"
          value={draft.step}
          required
          hint="The max bid lands on it"
          onCommit={(step) => step !== undefined && step > 0 && put({ step })}
        />
      </div>
    </fieldset>
  );
}
