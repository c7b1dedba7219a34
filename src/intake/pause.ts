/** Waits until the page has had a chance to draw and to answer. */
export type Pause = () => Promise<void>;

interface Yielding {
  readonly yield?: () => Promise<void>;
}

/** The browser's own way to step aside where it has one; else a message to ourselves, which no clamp delays as it does timers. */
export function pauseForPage(): Promise<void> {
  const { scheduler } = globalThis as { scheduler?: Yielding };
  if (scheduler?.yield !== undefined) return scheduler.yield();
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
