import { bothChanges, type StoreChange } from '../write/touched.ts';

/** Tells everyone who shows the store what changed, in this tab, in other tabs and in the background. */
export interface ChangeFeed {
  /** Called with all that changed since the last call; returns how to stop. */
  subscribe(listener: (change: StoreChange) => void): () => void;
  /** Something was written here. */
  announce(change: StoreChange): void;
  close(): void;
}

/** How long changes are gathered before listeners are called, in milliseconds. */
const GATHER = 40;
/** The same for changes to many lots: an import is hundreds of writes, and each reading of all lots takes its time. */
const GATHER_MANY = 400;

/** What a feed needs of a BroadcastChannel. */
export interface Channel {
  onmessage: ((event: MessageEvent) => void) | null;
  postMessage(message: unknown): void;
  close(): void;
}

/**
 * A message is only a hint to read again: one that is lost, doubled or late does no harm to the data.
 * @param openChannel null where the browser has no channel between tabs; the caller then looks for changes himself.
 */
export function changeFeed(openChannel: (() => Channel) | null): ChangeFeed {
  const listeners = new Set<(change: StoreChange) => void>();
  const channel = openChannel?.() ?? null;
  let gathered: StoreChange | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function gather(change: StoreChange): void {
    gathered = gathered === null ? change : bothChanges(gathered, change);
    timer ??= setTimeout(deliver, change.lots === 'many' ? GATHER_MANY : GATHER);
  }

  function deliver(): void {
    const change = gathered;
    gathered = null;
    timer = undefined;
    // Each in a task of its own, so that one that throws is reported and the others are still called.
    if (change !== null) for (const listener of listeners) queueMicrotask(() => listener(change));
  }

  // Only our own pages and background can open a channel of this origin, so the message is one of ours.
  if (channel !== null) channel.onmessage = (event) => gather(event.data as StoreChange);

  return {
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    announce(change) {
      gather(change);
      // Told to the others at once: this tab may be closed before the timer fires.
      channel?.postMessage(change);
    },
    close() {
      clearTimeout(timer);
      listeners.clear();
      channel?.close();
    },
  };
}
