import { onWake, wakeEvery } from '../browser/alarms.ts';
import { build } from '../browser/build.ts';
import { onInstalled, onStart } from '../browser/lifecycle.ts';
import { onMessage } from '../browser/messaging.ts';
import { onNoticeButton, onNoticeClicked } from '../browser/notifications.ts';
import { offerInPageMenu, onPageOpened, onReadAsked } from '../browser/page-commands.ts';
import { openCompanion } from '../browser/pages.ts';
import { openPopupFor } from '../browser/popup.ts';
import { runTeamProgram } from '../browser/team-program.ts';
import { answerMessage } from '../messages/answer-message.ts';
import { DEMO_STORE } from '../store/demo-store.ts';
import { openThisStore } from '../store/open-this-store.ts';
import { answerNotice } from './answer-notice.ts';
import { firstRowsKeeper } from './first-rows-keeper.ts';
import { handlersFor } from './handlers.ts';
import { type Lookout, lookout, NEXT } from './look-again.ts';
import { readNoticeId } from './notice-id.ts';
import { planApart } from './plan-apart.ts';
import { planKeeper } from './plan-keeper.ts';
import { refreshFromPage } from './refresh-from-page.ts';
import { teamKeeper } from './team-keeper.ts';
import { THIS_WORLD } from './world.ts';

const seeToFirstRows = firstRowsKeeper({ ...THIS_WORLD, build });
const alone = lookout(THIS_WORLD);
const apart = { planApart: planApart() };
const seeToPlan = planKeeper({ ...THIS_WORLD, ...apart }, () => void lookoutHere.lookAgain());
const seeToTeam = teamKeeper({ ...THIS_WORLD, runTeamProgram }, () => void lookoutHere.lookAgain());
const lookoutHere: Lookout = {
  lookAgain: (because) =>
    alone.lookAgain(because).finally(() => {
      seeToFirstRows();
      seeToPlan();
      seeToTeam();
    }),
};
const demo = { ...THIS_WORLD, ...apart, storeName: DEMO_STORE, openStore: () => openThisStore(undefined, DEMO_STORE) };
const { lookAgain } = lookoutHere;
const handlers = handlersFor(
  lookoutHere,
  planKeeper(demo, () => undefined),
);

// Every listener is registered at once and at the top level: a listener added later misses the event that woke us.
onStart(() => {
  void offerInPageMenu();
  void lookAgain();
});
onInstalled(() => void openCompanion('#/start'));
onWake((name) => void lookAgain(name === NEXT ? 'call-due' : 'other'));
onNoticeClicked((id) => void openCompanion(readNoticeId(id).route));
onNoticeButton((id, index) => void answerNotice(THIS_WORLD, lookoutHere, id, index));
onPageOpened((tab, url) => void refreshFromPage(tab, url, lookoutHere));
onReadAsked((tab) => void openPopupFor(tab, 'read'));
onMessage((message, fromOwnPage, tab) =>
  answerMessage(message, { sender: fromOwnPage ? 'own-page' : 'web-page', tab }, handlers),
);

// Browsers lose alarms at a restart, so the standing one is asked for again at every start of this worker.
void wakeEvery('safety-net', 2);
void lookAgain();
