import { useEffect, useState } from 'preact/hooks';
import type { Instant } from '../../src/domain/time/instant.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ScreenCounts } from '../../src/views/counts/screen-counts.ts';
import { Frame, type FrameProps } from './frame.tsx';
import './frame-menu.css';

/** Long enough for the rows to be drawn first, and for several changes in a row to be counted once. */
const REST_MS = 1_000;
const NOTHING = () => ({});

/** The frame with what waits on each screen, which is counted when nothing else is to be done. */
export function CountedFrame(props: FrameProps) {
  const countAt = useCounting();
  const now = useNow(60_000);
  return <Frame {...props} counts={countAt(now)} />;
}

function useCounting(): (now: Instant) => ScreenCounts {
  const { store, lots, complete, setup } = useWorkspace();
  const [countAt, setCountAt] = useState<(now: Instant) => ScreenCounts>(() => NOTHING);
  useEffect(() => {
    if (!complete) return;
    let current = true;
    let timer: ReturnType<typeof setTimeout>;
    const count = async () => {
      // With the screens that list the same, which it shares most of its code with.
      const { readCounts } = await import('./screens-for-after.ts');
      const found = await readCounts(store, setup, lots);
      if (current) setCountAt(() => found);
    };
    const soon = () => {
      clearTimeout(timer);
      // What can't be read is said by the screen that shows it; here a number is missing, and none is wrong.
      timer = setTimeout(() => count().catch(() => current && setCountAt(() => NOTHING)), REST_MS);
    };
    soon();
    const stop = store.subscribe(soon);
    return () => {
      current = false;
      clearTimeout(timer);
      stop();
    };
  }, [store, lots, complete, setup]);
  return countAt;
}
