import { showNotice } from '../browser/notifications.ts';
import type { Handlers } from '../messages/answer-message.ts';
import { lookAgain } from './look-again.ts';

export const HANDLERS: Handlers = {
  'plan-again': async () => ({ planned: await lookAgain() }),
  'try-notice': async () => {
    await showNotice({
      id: 'try-notice',
      title: 'This is how Headroom calls you',
      body: 'A real one names the lot, the price at which to stop and the time left.',
      stays: false,
    });
    return { shown: true };
  },
};
