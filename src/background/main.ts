import { onWake, wakeEvery } from '../browser/alarms.ts';
import { onStart } from '../browser/lifecycle.ts';
import { onMessage } from '../browser/messaging.ts';
import { onNoticeClicked } from '../browser/notifications.ts';
import { openCompanion } from '../browser/pages.ts';
import { answerMessage } from '../messages/answer-message.ts';
import { HANDLERS } from './handlers.ts';
import { lookAgain } from './look-again.ts';
import { routeOfNotice } from './notice-route.ts';

// Every listener is registered at once and at the top level: a listener added later misses the event that woke us.
onStart(() => void lookAgain());
onWake(() => void lookAgain());
onNoticeClicked((id) => void openCompanion(routeOfNotice(id)));
onMessage((message, fromOwnPage) => answerMessage(message, fromOwnPage ? 'own-page' : 'web-page', HANDLERS));

// Browsers lose alarms at a restart, so the standing one is asked for again at every start of this worker.
void wakeEvery('safety-net', 5);
void lookAgain();
