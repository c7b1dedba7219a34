import type { CloseTime } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { pickCloseTime, readCloseTime } from '../../../src/domain/time/read-close-time.ts';
import { sayTime } from '../../../src/domain/time/say-time.ts';
import type { Zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { ReadInput } from '../../../src/ui/inputs/read-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { wordsOfDoubt } from '../../../src/views/words/close-words.ts';
import type { LotEdit } from '../use-lot-edit.ts';

interface CloseInputProps {
  readonly lot: LotState;
  readonly edit: LotEdit;
  readonly venueZone: Zone | undefined;
}

/** When it closes, typed as the sale says it; what it was understood as stands beside it, doubts included. */
export function CloseInput({ lot, edit, venueZone }: CloseInputProps) {
  const { setup } = useWorkspace();
  const { close } = lot.facts;
  const storeZone = setup.store.zone;
  return (
    <div class="stack wide">
      <ReadInput<CloseTime>
        label="Closes"
        value={close}
        write={(value) => value.text}
        read={(text) =>
          readCloseTime(text, {
            now: instant(Date.now()),
            storeZone,
            ...(venueZone === undefined ? {} : { venueZone }),
          })
        }
        placeholder="Sat Nov 28 2:05 PM ET"
        hint={
          close === undefined
            ? 'As the sale states it, with the time zone if it has one'
            : `${sayTime(close.instant, storeZone)} store time (${close.zone})`
        }
        onCommit={(value) => edit.commit('close', value, 'Close saved.')}
      />
      {close !== undefined && close.doubts.length > 0 && (
        <div class="note warning stack" role="alert">
          <p>{wordsOfDoubt(close)} Until you choose, reminders use the earliest.</p>
          <div class="row">
            {[close.instant, ...close.otherwise].map((choice) => (
              <button
                key={choice}
                type="button"
                onClick={() => edit.commit('close', pickCloseTime(close, choice), 'Close saved.')}
              >
                {sayTime(choice, storeZone)}
              </button>
            ))}
          </div>
        </div>
      )}
    </div>
  );
}
