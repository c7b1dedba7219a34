import { api } from './extension-api.ts';

/** Sends `message` to the background and returns whatever answers. */
export function sendToBackground(message: unknown): Promise<unknown> {
  return api.runtime.sendMessage(message);
}

/**
 * Registers the one listener for messages. `answer` must decide synchronously: null means the message is not ours, and
 * then nothing is sent back, so that another listener can. Own pages are told from web pages by the sender's address.
 */
export function onMessage(
  answer: (message: unknown, fromOwnPage: boolean, tab: number | undefined) => Promise<unknown> | null,
): void {
  const own = api.runtime.getURL('');
  api.runtime.onMessage.addListener((message: unknown, sender, reply) => {
    const fromOwnPage = sender.id === api.runtime.id && (sender.url ?? '').startsWith(own);
    const pending = answer(message, fromOwnPage, sender.tab?.id);
    if (pending === null) return false;
    pending.then(reply, () => reply(undefined));
    return true;
  });
}
