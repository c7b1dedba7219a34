import { useMemo, useState } from 'preact/hooks';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { lotsToLink } from '../../src/folds/lots-to-link.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';

const MOST = 40;

export interface NewLotPickProps {
  /** The lot whose sale was undone. */
  readonly lot: LotState;
  readonly value: LotId | undefined;
  readonly onChange: (id: LotId | undefined) => void;
}

/** Which lot the car is now that it is offered again: those with its VIN first, any other by a search. */
export function NewLotPick({ lot, value, onChange }: NewLotPickProps) {
  const { lots, setup } = useWorkspace();
  const [search, setSearch] = useState<string>();
  const found = useMemo(() => lotsToLink(lots, lot, search ?? ''), [lots, lot, search]);
  const name = ({ facts }: LotState) =>
    [
      lotTitle(facts),
      facts.venueName ?? facts.venueId,
      facts.lotNumber && `lot ${facts.lotNumber}`,
      facts.close && sayTime(facts.close.instant, setup.store.zone),
    ]
      .filter(Boolean)
      .join(' · ');
  return (
    <>
      <TextInput
        label="Find the new lot"
        value={search}
        longest={120}
        placeholder="Car, VIN, lot, venue"
        onCommit={setSearch}
      />
      <ChoiceInput
        label="Offered again as"
        value={value}
        none={found.length === 0 ? 'no lot matches' : 'not known yet'}
        choices={found.slice(0, MOST).map((one) => ({ value: one.id, label: name(one) }))}
        hint={
          found.length > MOST
            ? `The first ${MOST} of ${found.length}`
            : 'Only lots on your list. You can link it later.'
        }
        onCommit={(id) => onChange(found.find((one) => one.id === id)?.id)}
      />
    </>
  );
}
