import { useState } from 'preact/hooks';
import type { DisputeOutcome } from '../../src/domain/dispute/dispute.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { sayOutcome } from '../../src/journal/happenings/after-sale-words.ts';
import type { DisputeState } from '../../src/journal/states/after-sale-state.ts';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { useOneLot } from '../../src/ui/hooks/use-one-lot.ts';
import { LEARNED } from './end-form.tsx';
import { NewLotPick } from './new-lot-pick.tsx';
import { useLatest } from './use-latest.ts';
import { WordsInput } from './words-input.tsx';

export interface EndedNoteProps {
  readonly lot: LotState;
  readonly dispute: DisputeState;
  readonly outcome: NonNullable<DisputeState['outcome']>;
}

/** How a dispute ended, where its money is booked, which lot the car is now, and the way to open it again. */
export function EndedNote({ lot, dispute, outcome }: EndedNoteProps) {
  const { takeBack } = useAfterVerbs();
  return (
    <>
      <div class="note row">
        <span>
          <span class="strong">Closed.</span> {sayOutcome(outcome)}
        </span>
        {outcome.newLot !== undefined && <NewLot id={outcome.newLot} />}
        {(outcome.cents ?? 0) !== 0 && (
          <a class="no-print" href={`#/books/${lot.id}`}>
            Its money, in the purchase folder
          </a>
        )}
        <button type="button" class="no-print" onClick={() => takeBack(outcome.entry)}>
          Reopen
        </button>
      </div>
      {outcome.ended === 'sold-again' && outcome.newLot === undefined && (
        <LinkForm lot={lot} dispute={dispute} outcome={outcome} />
      )}
    </>
  );
}

function NewLot({ id }: { id: LotId }) {
  const found = useOneLot(id);
  return <a href={`#/lot/${id}`}>Offered again{found ? `: ${lotTitle(found.facts)}` : ''}</a>;
}

/** For a car that is listed again only after the dispute had ended. A new entry that corrects the first. */
function LinkForm({ lot, dispute, outcome }: EndedNoteProps) {
  const { note } = useAfterVerbs();
  const [newLot, setNewLot] = useState<LotId>();
  const [words, setWords] = useState(outcome.words ?? '');
  const latest = useLatest({ newLot, words });
  const keep = async () => {
    const now = await latest();
    const { ended, at, cents } = outcome;
    const corrected: DisputeOutcome = {
      ended,
      at,
      ...(cents !== undefined && { cents }),
      ...(now.words.trim() !== '' && { words: now.words.trim() }),
      ...(now.newLot !== undefined && { newLot: now.newLot }),
    };
    await note(lot, { kind: 'dispute-closed', dispute: dispute.entry, outcome: corrected }, 'Saved on the lot.');
  };
  return (
    <section class="panel stack no-print">
      <h2>This car, offered again</h2>
      <div class="fields">
        <NewLotPick lot={lot} value={newLot} onChange={setNewLot} />
      </div>
      <WordsInput label={LEARNED} value={words} longest={4000} onChange={setWords} rows={2} />
      <p>
        <button type="button" onClick={keep}>
          Save
        </button>
      </p>
    </section>
  );
}
