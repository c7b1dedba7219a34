/** A clock that a test turns: what waits for a time happens when it comes, and what follows from it before the next. */
export class TurnedClock {
  now: number;
  private waiting: { readonly at: number; readonly id: number; readonly call: () => void }[] = [];
  private last = 0;

  constructor(now: number) {
    this.now = now;
  }

  readonly setTimeout = (call: () => void, ms: number): number => {
    const id = ++this.last;
    this.waiting.push({ at: this.now + ms, id, call });
    return id;
  };

  readonly clearTimeout = (id: number): void => {
    this.waiting = this.waiting.filter((one) => one.id !== id);
  };

  /** Lets everything happen up to `until`, or until it is done. */
  async runUntil(until: number, isDone: () => boolean): Promise<void> {
    await settled();
    while (!isDone()) {
      const next = this.waiting.reduce<(typeof this.waiting)[number] | null>(
        (first, one) =>
          first === null || one.at < first.at || (one.at === first.at && one.id < first.id) ? one : first,
        null,
      );
      if (next === null || next.at > until) break;
      this.waiting = this.waiting.filter((one) => one !== next);
      this.now = Math.max(this.now, next.at);
      next.call();
      await settled();
    }
    if (!isDone()) this.now = Math.max(this.now, until);
  }
}

/** Until everything that waits for nothing but its turn has had it, observers of the page among them. */
const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
