import { noticeIds, showNotice } from '../browser/notifications.ts';
import { openPopupFor } from '../browser/popup.ts';
import type { Handlers } from '../messages/answer-message.ts';
import type { Lookout } from './look-again.ts';

/** A click on it leads back to where it was asked for; its buttons do nothing. */
const TRIAL = 'trial #/setup/alerts';

/** @param planDemo sees to the plan of the demo, which has no reminders */
export const handlersFor = ({ lookAgain }: Lookout, planDemo: () => void): Handlers => ({
  'plan-again': async ({ demo }) => {
    if (!demo) return { planned: await lookAgain() };
    planDemo();
    return { planned: 0 };
  },
  'try-notice': async () => {
    await showNotice({
      id: TRIAL,
      title: 'This is how Headroom reminds you',
      body: 'A real one names the lot, the price to stop at and the time left.',
      loudness: 'loud',
      buttons: ['Remind me in 10 min', 'No more reminders'],
    });
    return { taken: (await noticeIds()).includes(TRIAL) };
  },
  'pointing-done': async (_, { tab }) => {
    if (tab !== undefined) await openPopupFor(tab, 'pointed');
    return {};
  },
});
