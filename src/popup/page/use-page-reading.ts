import { useEffect, useRef, useState } from 'preact/hooks';
import type { DraftLots } from '../../capture/draft/draft-lot.ts';
import type { ReadContext } from '../../capture/read-context.ts';
import { sayTheSame } from '../../capture/watch/say-the-same.ts';
import { readTab } from '../../reading/read-tab.ts';

export type Reading =
  | { readonly at: 'reading' }
  | { readonly at: 'failed'; readonly message: string }
  | { readonly at: 'read'; readonly page: DraftLots; readonly changed: boolean };

export type StillSo = 'same' | 'changed' | 'gone' | 'slow';

export interface PageReading {
  readonly reading: Reading;
  /**
   * Resolves once the page was read again after a rest: `same` when it still says what is shown, `changed` when it does
   * not, and what it says now is shown instead; `gone` when it can't be read any more; `slow` when it does not answer.
   */
  readonly settled: () => Promise<StillSo>;
  readonly readAgain: () => void;
  readonly fail: (message: string) => void;
}

/** What is said when the user wants to keep what was read. */
export const STILL_WORDS = {
  same: undefined,
  changed: 'Nothing was saved: the page has changed. Check what it says now, then press again.',
  gone: 'Nothing was saved: the page was left. Go back to it and read it again.',
  slow: 'Nothing was saved: the page does not answer. Wait until it has finished loading, then press again.',
} as const;

const SLOW =
  'The page did not answer within 8 seconds. Wait until it has finished loading and read it again, or type the lot in.';
const SLOW_MS = 8000;
/** A page that never comes to rest is read four times, with four seconds between. */
const STEADY_MS = 20_000;

/** Reads the page in a tab at once, then reads it again after a rest, because a page may still hold another car's figures. */
export function usePageReading(tab: number, contextOf: () => Promise<ReadContext>): PageReading {
  const [reading, setReading] = useState<Reading>({ at: 'reading' });
  const second = useRef<Promise<StillSo>>(Promise.resolve('gone'));
  const round = useRef(0);
  const fail = (message: string) => setReading({ at: 'failed', message });
  const start = async (mine: number) => {
    const read = async () => {
      const context = await contextOf();
      return { context, first: await readTab(tab, context, 'at-once') };
    };
    const answer = await Promise.race([read(), slowAfter(SLOW_MS)]);
    // He has pressed again meanwhile.
    if (mine !== round.current) return;
    if (answer === 'slow') return fail(SLOW);
    const { context, first } = answer;
    if (!first.ok) return fail(first.message);
    setReading({ at: 'read', page: first.value, changed: false });
    second.current = again(context, first.value);
  };
  const again = async (context: ReadContext, shown: DraftLots): Promise<StillSo> => {
    const steady = await readTab(tab, context, 'steadily');
    if (!steady.ok) return 'gone';
    if (sayTheSame(shown, steady.value)) return 'same';
    setReading({ at: 'read', page: steady.value, changed: true });
    // It was said twice alike by now. Only who pressed before it changed is told so.
    second.current = Promise.resolve('same');
    return 'changed';
  };
  const readAgain = () => {
    setReading({ at: 'reading' });
    start(++round.current).catch((error: unknown) => {
      fail(`The page could not be read: ${String(error)}. Reload it and read it again, or type the lot in.`);
      reportError(error);
    });
  };
  useEffect(() => {
    if (round.current === 0) readAgain();
  });
  const settled = () => Promise.race([second.current, slowAfter(STEADY_MS)]);
  return { reading, settled, readAgain, fail };
}

const slowAfter = (ms: number): Promise<'slow'> => new Promise((resolve) => setTimeout(() => resolve('slow'), ms));
