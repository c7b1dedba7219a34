import { useMemo } from 'preact/hooks';

/** How long a press rests before the next one counts, in milliseconds. */
const SETTLES_MS = 350;

interface SettledPresses {
  readonly onClickCapture: (event: MouseEvent) => void;
}

/**
 * For rows that move up when one is done: the second half of a double tap lands on a button that has just come under the
 * thumb, and is not meant for it. A press by keyboard stays where its focus is, and counts.
 */
export function useSettledPresses(): SettledPresses {
  return useMemo(() => {
    let last = Number.NEGATIVE_INFINITY;
    return {
      onClickCapture(event) {
        const { target, timeStamp, detail } = event;
        if (detail === 0 || !(target instanceof Element) || target.closest('.now-quick button') === null) return;
        if (timeStamp - last < SETTLES_MS) {
          event.preventDefault();
          event.stopPropagation();
          return;
        }
        last = timeStamp;
      },
    };
  }, []);
}
