import { DAY, HOUR } from '../domain/time/units.ts';
import '../ui/look/look.css';
import '../ui/look/look-font.css';
import { render } from 'preact';
import { sendToBackground } from '../browser/messaging.ts';
import { frontTab } from '../browser/page-access.ts';
import { forgetPopupTask } from '../browser/popup.ts';
import { thisZone } from '../browser/this-zone.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import { instant } from '../domain/time/instant.ts';
import type { LotState } from '../folds/lot-state.ts';
import { askBackground } from '../messages/ask-background.ts';
import { openThisStore } from '../store/open-this-store.ts';
import { markLotsShown } from '../views/lots/lots-shown.ts';
import { plannedBids } from '../views/plan/kept-plan.ts';
import { pageNews } from './page/page-news.ts';
import { PopupFrame } from './popup-frame.tsx';

const WEEK_MS = 7 * DAY;
/** A lot that closed stays in the list this long, so that one tap says how it ended. */
const JUST_CLOSED_MS = 3 * HOUR;
const MOST = 30;
/** Among these a lot without a VIN is looked for by its page. */
const RECENT_MS = 30 * DAY;
const MOST_RECENT = 2000;

/** Reads the next closings and draws them; the store is read once, because a popup lives for seconds. */
async function start(frame: HTMLElement): Promise<void> {
  const [opened, tab] = await Promise.all([openThisStore(), frontTab()]);
  frame.textContent = '';
  if (!opened.ok) {
    render(<p class="popup-opening">{opened.message}</p>, frame);
    return;
  }
  const store = opened.value;
  // The background plans the calls for what is kept here; without this it would only look at its next round.
  store.subscribe(() => {
    askBackground(sendToBackground, 'plan-again', {}).catch((error: unknown) => reportError(error));
  });
  const now = Date.now();
  const task = new URLSearchParams(location.search);
  // News of the page stay until it is left; what was asked for is done once.
  if (tab !== null && (task.has('read') || task.has('pointed'))) await forgetPopupTask(tab.id);
  const [setup, plan, lots] = await Promise.all([
    store.setup(),
    store.plan(),
    store.lotsByClose({ from: instant(now - JUST_CLOSED_MS), before: instant(now + WEEK_MS), limit: MOST }),
  ]);
  let reading: Promise<readonly LotState[]> | undefined;
  const recent = () => {
    reading ??= store.lotsByClose({ from: instant(now - RECENT_MS), limit: MOST_RECENT });
    return reading;
  };
  render(
    <PopupFrame
      store={store}
      setup={wholeSetup(setup, thisZone())}
      planned={plannedBids(plan?.plan)}
      lots={lots}
      recent={recent}
      tab={tab}
      task={task.has('read') ? 'read' : task.has('pointed') ? 'pointed' : undefined}
      news={await pageNews(store, task)}
    />,
    frame,
  );
  markLotsShown();
}

const frame = document.getElementById('popup');
if (frame !== null) {
  start(frame).catch((error: unknown) => {
    frame.textContent = '';
    render(<p class="popup-opening">The lots can’t be shown: {String(error)}</p>, frame);
    reportError(error);
  });
}
