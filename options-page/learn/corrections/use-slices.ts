import { useEffect, useState } from 'preact/hooks';

/** A slice of work short enough that the page never feels it. */
const SLICE_MS = 12;

export interface Sliced<Result> {
  /** Null until it is done. */
  readonly result: Result | null;
  /** How far it has come, in pieces. */
  readonly done: number;
  /** Why it came to nothing, in a sentence. */
  readonly failed?: string;
}

const NOT_BEGUN = { result: null, done: 0 };

/**
 * Does work that stops after each piece, a few milliseconds at a time, and begins anew when it is given other work.
 * @param begin null for nothing to do; must be the same function for the same work
 */
export function useSlices<Result>(begin: (() => Generator<number, Result>) | null): Sliced<Result> {
  const [state, setState] = useState<Sliced<Result> & { readonly of: unknown }>({ ...NOT_BEGUN, of: null });
  useEffect(() => {
    if (begin === null) return;
    const work = begin();
    let timer: ReturnType<typeof setTimeout>;
    const slice = () => {
      const until = performance.now() + SLICE_MS;
      try {
        for (let step = work.next(); ; step = work.next()) {
          if (step.done) return setState({ result: step.value, done: 0, of: begin });
          if (performance.now() > until) {
            setState({ result: null, done: step.value, of: begin });
            break;
          }
        }
      } catch (error) {
        return setState({ ...NOT_BEGUN, of: begin, failed: error instanceof Error ? error.message : String(error) });
      }
      timer = setTimeout(slice, 0);
    };
    timer = setTimeout(slice, 0);
    return () => clearTimeout(timer);
  }, [begin]);
  // What was worked out for other work is no answer to this.
  return state.of === begin ? state : NOT_BEGUN;
}
