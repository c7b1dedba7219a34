import '../ui/look.css';
import { render } from 'preact';
import { startingSetup } from '../domain/setup/starting-setup.ts';
import { instant } from '../domain/time/instant.ts';
import { openThisStore } from '../ui/open-this-store.ts';
import { thisZone } from '../ui/this-zone.ts';
import { Popup } from './popup.tsx';

const WEEK_MS = 7 * 24 * 3_600_000;
const JUST_CLOSED_MS = 15 * 60_000;
const MOST = 30;

/** Reads the next closings and draws them; the store is read once, because a popup lives for seconds. */
async function start(frame: HTMLElement): Promise<void> {
  const opened = await openThisStore();
  frame.textContent = '';
  if (!opened.ok) {
    render(<p class="popup-opening">{opened.message}</p>, frame);
    return;
  }
  const store = opened.value;
  const now = Date.now();
  const [setup, lots] = await Promise.all([
    store.setup(),
    store.lotsByClose({ from: instant(now - JUST_CLOSED_MS), before: instant(now + WEEK_MS), limit: MOST }),
  ]);
  render(<Popup store={store} setup={{ ...startingSetup(thisZone()), ...setup }} lots={lots} />, frame);
}

const frame = document.getElementById('popup');
if (frame !== null) {
  start(frame).catch((error: unknown) => {
    frame.textContent = '';
    render(<p class="popup-opening">The lots can’t be shown: {String(error)}</p>, frame);
    reportError(error);
  });
}
