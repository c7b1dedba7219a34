import { useState } from 'preact/hooks';
import type { FeeBand } from '../../src/domain/fees/fee-schedule.ts';
import { withVenueFees } from '../../src/domain/setup/fill-hole.ts';
import type { Venue } from '../../src/domain/setup/venue.ts';
import { freshId } from '../../src/ui/fresh-id.ts';
import { FeeBox } from './fee-box.tsx';
import type { FillProps } from './fill.ts';

/** Asks what a buyer pays at a venue that has no fees yet. */
export function FeesFill({ venue, setup, onFill }: FillProps & { readonly venue: Venue }) {
  const [text, setText] = useState('');
  const [bands, setBands] = useState<readonly FeeBand[]>();
  const save = (read: readonly FeeBand[]) =>
    onFill(withVenueFees(setup, venue.id, read, freshId('fees')), `Fees of ${venue.name} saved.`);
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        if (bands !== undefined) save(bands);
      }}
    >
      <FeeBox
        venue={venue.name}
        text={text}
        onType={(typed, read) => {
          setText(typed);
          setBands(read);
        }}
      />
      <p class="row">
        <button type="submit" disabled={bands === undefined}>
          Save these fees
        </button>
        <button type="button" class="plain" onClick={() => save([])}>
          {venue.name} charges no buy fee
        </button>
      </p>
    </form>
  );
}
