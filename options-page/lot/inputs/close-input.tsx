import { useState } from 'preact/hooks';
import { wordsOfDoubt } from '../../../src/domain/close/doubt-words.ts';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import { closeChoices, sayClose } from '../../../src/domain/close/say-close.ts';
import type { CloseTime } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { Zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { Unkept } from '../../../src/ui/ask/unkept.tsx';
import { useAskedAct } from '../../../src/ui/ask/use-asked-act.ts';
import { ReadInput } from '../../../src/ui/inputs/read-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';

interface CloseInputProps {
  readonly lot: LotState;
  readonly venueZone: Zone | undefined;
}

/** When it closes, typed as the sale says it; what it was understood as stands beside it, doubts included. */
export function CloseInput({ lot, venueZone }: CloseInputProps) {
  const { setup } = useWorkspace();
  const { send, pending, clear } = useAskedAct(lot);
  const [left, setLeft] = useState(0);
  const asked = pending?.act.do === 'set-close' ? pending.act.close?.instant : undefined;
  const { close } = lot.facts;
  const storeZone = setup.store.zone;
  return (
    <div class="stack wide">
      <ReadInput<CloseTime>
        key={left}
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
            : `${sayClose(close, storeZone, instant(Date.now()))} store time (${close.zone})`
        }
        onCommit={(value) => {
          // Leaving the box for the question below it is no second answer.
          if (value === undefined || value.instant !== asked) void send({ do: 'set-close', close: value });
        }}
      />
      <Unkept
        pending={pending}
        onAct={send}
        onLeave={(leads) => {
          clear();
          if (leads !== 'edit') setLeft(left + 1);
        }}
      />
      {close !== undefined && close.doubts.length > 0 && (
        <div class="note warning stack" role="alert">
          <p>{wordsOfDoubt(close)} Until you choose, each time gets its reminders.</p>
          <div class="row">
            {closeChoices(close, storeZone, instant(Date.now())).map(({ at, words }) => (
              <button key={at} type="button" onClick={() => void send({ do: 'pick-close', at })}>
                {words}
              </button>
            ))}
          </div>
        </div>
      )}
    </div>
  );
}
