import { withVenueFees } from '../../../src/domain/setup/fill-hole.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { freshId } from '../../../src/ui/fresh-id.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { FeesFill } from '../../holes/fees-fill.tsx';
import { useSetupEdit } from '../setup-edit.ts';

interface VenueFeesProps {
  readonly venue: Venue;
  readonly onChange: (venue: Venue, said: string) => void;
}

/** The fees of a venue that has none yet, asked for inside the venue: a schedule of its own is made and tied to it. */
export function VenueFees({ venue, onChange }: VenueFeesProps) {
  const { setup, change } = useSetupEdit();
  if (venue.feeScheduleIds.length > 0) return null;
  if (venue.noBuyFees !== true && venue.name !== '')
    return <FeesFill venue={venue} setup={setup} onFill={(set, said) => change(set, said)} />;
  const { noBuyFees: _, ...rest } = venue;
  return (
    <CheckInput
      label="Charges no buy fee"
      value={venue.noBuyFees === true}
      onCommit={(none) =>
        none
          ? change(withVenueFees(setup, venue.id, [], freshId('fees')), `${venue.name} charges no buy fee.`)
          : onChange(rest, `Fees of ${venue.name} are to be entered.`)
      }
    />
  );
}
