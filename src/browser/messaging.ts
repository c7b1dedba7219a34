import browser, { type Runtime } from 'webextension-polyfill';

/** Sends `message` to the background and returns whatever answers. */
export function sendToBackground(message: unknown): Promise<unknown> {
  return browser.runtime.sendMessage(message);
}

/**
 * Registers the one listener for messages. `answer` must decide synchronously: null means the message is not ours, and
 * then nothing is sent back, so that another listener can. Own pages are told from web pages by the sender's address.
 */
export function onMessage(
  answer: (message: unknown, fromOwnPage: boolean, tab: number | undefined) => Promise<unknown> | null,
): void {
  const own = browser.runtime.getURL('');
  const listener = (message: unknown, sender: Runtime.MessageSender): Promise<unknown> | undefined => {
    const fromOwnPage = sender.id === browser.runtime.id && (sender.url ?? '').startsWith(own);
    // Whoever asked is told nothing of what went wrong here.
    return answer(message, fromOwnPage, sender.tab?.id)?.catch(() => undefined);
  };
  // The typings know listeners that always promise an answer, and listeners that never do.
  browser.runtime.onMessage.addListener(listener as Runtime.OnMessageListenerAsync);
}
