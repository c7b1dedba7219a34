import { useEffect, useRef, useState } from 'preact/hooks';
import type { DraftLots } from '../../capture/draft/draft-lot.ts';
import type { ReadContext } from '../../capture/read-context.ts';
import { sayTheSame } from '../../capture/watch/say-the-same.ts';
import { readTab } from '../../reading/read-tab.ts';

export type Reading =
  | { readonly at: 'reading' }
  | { readonly at: 'failed'; readonly message: string }
  | { readonly at: 'read'; readonly page: DraftLots; readonly changed: boolean };

export interface PageReading {
  readonly reading: Reading;
  /**
   * Resolves once the page was read again after a rest: `same` when it still says what is shown, `changed` when it does
   * not, and what it says now is shown instead; `gone` when it can't be read any more.
   */
  readonly settled: () => Promise<'same' | 'changed' | 'gone'>;
  readonly fail: (message: string) => void;
}

/** What is said when the user wants to keep what was read. */
export const STILL_WORDS = {
  same: undefined,
  changed: 'Nothing was saved: the page has changed. Check what it says now, then press again.',
  gone: 'Nothing was saved: the page was left. Go back to it and read it again.',
} as const;

const SLOW =
  'The page did not answer within 8 seconds. Wait until it has finished loading and read it again, or type the lot in.';
const SLOW_MS = 8000;

/** Reads the page in a tab at once, then reads it again after a rest, because a page may still hold another car's figures. */
export function usePageReading(tab: number, contextOf: () => Promise<ReadContext>): PageReading {
  const [reading, setReading] = useState<Reading>({ at: 'reading' });
  const second = useRef<Promise<'same' | 'changed' | 'gone'>>(Promise.resolve('gone'));
  const started = useRef(false);
  const fail = (message: string) => setReading({ at: 'failed', message });
  const start = async () => {
    const context = await contextOf();
    const first = await Promise.race([readTab(tab, context, 'at-once'), afterAWhile()]);
    if (first === 'slow') return fail(SLOW);
    if (!first.ok) return fail(first.message);
    setReading({ at: 'read', page: first.value, changed: false });
    second.current = again(context, first.value);
  };
  const again = async (context: ReadContext, shown: DraftLots): Promise<'same' | 'changed' | 'gone'> => {
    const steady = await readTab(tab, context, 'steadily');
    if (!steady.ok) return 'gone';
    if (sayTheSame(shown, steady.value)) return 'same';
    setReading({ at: 'read', page: steady.value, changed: true });
    // It was said twice alike by now. Only who pressed before it changed is told so.
    second.current = Promise.resolve('same');
    return 'changed';
  };
  useEffect(() => {
    if (started.current) return;
    started.current = true;
    start().catch((error: unknown) => {
      fail(`The page could not be read: ${String(error)}`);
      reportError(error);
    });
  });
  return { reading, settled: () => second.current, fail };
}

const afterAWhile = (): Promise<'slow'> => new Promise((resolve) => setTimeout(() => resolve('slow'), SLOW_MS));
