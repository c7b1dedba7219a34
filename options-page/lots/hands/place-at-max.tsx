import { useMemo, useRef } from 'preact/hooks';
import { sumCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { doAtMax, type LeftOut, planAtMax } from '../../../src/views/lots/do-lot-acts.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import type { ChoiceBarProps } from './choice-bar.tsx';
import { LeftOutList } from './left-out-note.tsx';

interface PlaceAtMaxProps extends Pick<ChoiceBarProps, 'lots' | 'standings'> {
  /** With those that were left out. */
  readonly onDone: (left: readonly LeftOut[]) => void;
  readonly onLeave: () => void;
}

/** Asks once before many bids are noted: how many, how much money that is, and which chosen lots are left out. */
export function PlaceAtMax({ lots, standings, onDone, onLeave }: PlaceAtMaxProps) {
  const { store, setup, planned, say } = useWorkspace();
  const { ready, left } = useMemo(
    () => planAtMax(lots, { setup, standings, now: instant(Date.now()) }),
    [lots, setup, standings],
  );
  const at = planned.size === 0 ? 'at max' : 'as planned';
  const sending = useRef(false);
  const confirm = async () => {
    if (sending.current) return;
    sending.current = true;
    const done = await doAtMax(store, ready, { setup, standings, now: instant(Date.now()) });
    const noted = ready.length - done.left.length;
    if (noted > 0) say(`${countWords(noted, 'proxy', 'proxies')} ${at} noted.`, ...done.entries);
    onDone([...left, ...done.left]);
  };
  return (
    <div class="stack bulk-panel">
      {ready.length > 0 && (
        <p>
          You placed {countWords(ready.length, 'proxy', 'proxies')} {at} on the venues’ pages,{' '}
          {formatMoney(sumCents(ready.map(({ cents }) => cents)))} in all?
        </p>
      )}
      {left.length > 0 && (
        <div class="small">
          <p class="strong">Left out:</p>
          <LeftOutList left={left} />
        </div>
      )}
      <div class="row">
        {ready.length > 0 && (
          <button type="button" class="main" onClick={() => void confirm()}>
            Yes, note {ready.length === 1 ? 'it' : `all ${ready.length}`}
          </button>
        )}
        <button type="button" onClick={onLeave}>
          Cancel
        </button>
      </div>
    </div>
  );
}
