import { Refused } from '../write/refused.ts';

/** How whoever waits for long work hears of it, and ends it. */
export interface LongWork {
  /** Looked at between slices; then all of it is as if it had never begun. */
  readonly signal?: AbortSignal;
  /** Called between slices with the share that is done, from 0 to 1. */
  readonly onShare?: (share: number) => void;
}

interface Turns extends LongWork {
  /** How much there is to do, in whatever `took` counts. */
  readonly total: number;
  /** Ends the task that is running, and comes back soon. In a transaction only a request of its own may do that. */
  readonly stepAside: () => Promise<unknown>;
}

/** In milliseconds: with the piece of work that goes over it still far below the 100 that a hand notices. */
const SLICE_MS = 10;

/** Long work in slices, so that the page draws and answers in between, with its progress and a way to stop it. */
export class Slices {
  private readonly turns: Turns;
  /** Its first turn comes at once: the bar stands from the start, and what was stopped before it began never begins. */
  private until = 0;
  private done = 0;

  constructor(turns: Turns) {
    this.turns = turns;
  }

  /** Notes that so much more is done, and answers whether it is time for `turn`: most often not, and then nothing waits. */
  took(amount = 1): boolean {
    this.done += amount;
    return this.turns.signal?.aborted === true || performance.now() > this.until;
  }

  /**
   * Ends the task that is running. Between two steps that each take a while it is called without asking first.
   * @throws Refused when it was stopped
   */
  async turn(): Promise<void> {
    const { signal, onShare, total, stepAside } = this.turns;
    if (signal?.aborted) throw new Refused('stopped', 'It was stopped.');
    onShare?.(Math.min(1, this.done / Math.max(1, total)));
    await stepAside();
    this.until = performance.now() + SLICE_MS;
  }
}
