import { useState } from 'preact/hooks';
import type { LotAct } from '../../acts/act.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { EntryId } from '../../journal/ids.ts';
import type { Store } from '../../store/store.ts';
import type { Pending } from '../../ui/ask/use-asked-act.ts';
import { doLotAct, previewAct } from '../../views/lots/do-lot-act.ts';
import type { Standings } from '../../views/lots/standing.ts';
import { receiptOfPage } from './note-bid.ts';

interface NotedActOptions {
  readonly store: Store;
  readonly setup: Setup;
  readonly standings: Standings;
  readonly lot: LotState;
  /** Whether a bid is kept with a picture of the page in front. */
  readonly picture: boolean;
  readonly onKept: (lot: LotState) => void;
}

/** What was said of the last act, and what takes it back. */
export interface SaidAct {
  readonly words: string;
  readonly undo: readonly EntryId[];
}

/** Acts on a lot from the popup: with the page in front as a receipt where a bid is noted. */
export function useNotedAct({ store, setup, standings, lot, picture, onKept }: NotedActOptions) {
  const [pending, setPending] = useState<Pending>();
  const [said, setSaid] = useState<SaidAct>({ words: '', undo: [] });
  const fresh = async () => {
    const now = await store.lot(lot.id);
    if (now !== null) onKept(now);
  };
  const withReceipt = async (act: LotAct): Promise<{ readonly act: LotAct; readonly words: string }> => {
    const isReceipt = act.do === 'bid' || act.do === 'saw';
    // What is asked first keeps nothing yet, so no picture of it is kept either.
    if (!isReceipt || previewAct(lot, act, { setup, standings, now: instant(Date.now()) }).as !== 'write')
      return { act, words: '' };
    const { receipt, words } = await receiptOfPage(store, lot.id, picture);
    return { act: { ...act, receipt }, words };
  };
  const send = async (wanted: LotAct): Promise<boolean> => {
    const { act, words } = await withReceipt(wanted);
    const done = await doLotAct(store, lot, act, { setup, standings, now: instant(Date.now()) });
    if (done.as === 'ask' || done.as === 'refuse') {
      setSaid({ words: '', undo: [] });
      setPending({ act: wanted, ...(done.as === 'ask' ? { question: done.question } : { why: done.message }) });
    } else {
      setPending(undefined);
      const sentence = done.as === 'kept' ? `${done.words}: saved.` : done.message;
      // A second press changes nothing, so the first can still be undone.
      setSaid((before) => ({
        words: [sentence, words].filter(Boolean).join(' '),
        undo: done.as === 'kept' ? done.entries : before.undo,
      }));
      await fresh();
    }
    return done.as === 'kept' || done.as === 'nothing';
  };
  const undo = async () => {
    const taken = await store.undo(...said.undo);
    setSaid({ words: taken.ok ? 'Undone.' : taken.message, undo: [] });
    await fresh();
  };
  return {
    pending,
    said,
    undo,
    clear: () => setPending(undefined),
    /** What goes wrong on the way is said like a refusal. */
    send: (act: LotAct) =>
      send(act).catch((error: unknown) => {
        setPending({ act, why: error instanceof Error ? error.message : String(error) });
        return false;
      }),
  };
}
