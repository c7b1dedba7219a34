// First, so that the store is being opened while everything below is loaded.
import { firstLook, onTakenOver } from './shell/first-look.ts';
import '../src/ui/look/look.css';
import '../src/ui/look/look-font.css';
import '../src/ui/look/look-print.css';
import { type ComponentChild, render } from 'preact';
import { sendToBackground } from '../src/browser/messaging.ts';
import { askBackground } from '../src/messages/ask-background.ts';
import { isDemo } from '../src/ui/demo-mode.ts';
import { markLotsShown } from '../src/views/lots/lots-shown.ts';
import { readFirstFolders } from './books/use-first-folders.ts';
import { App } from './shell/app.tsx';
import { CannotOpen } from './shell/cannot-open.tsx';
import { WorkspaceProvider } from './shell/workspace-provider.tsx';

const BOOKS = /^#\/books(\/|$)/;
/** A start that takes this long is no usual one. */
const UNUSUAL_MS = 2_500;

/** Draws in the place of what stood there so far: the opening words, or the first rows. */
function draw(what: ComponentChild, page: HTMLElement): void {
  for (const id of ['opening', 'first-rows']) document.getElementById(id)?.remove();
  render(what, page);
}

/** Draws the screens over the store once it is open; what goes wrong on the way is said on the page. */
async function start(page: HTMLElement): Promise<void> {
  const opening = document.getElementById('opening');
  const patience = setTimeout(() => {
    if (opening === null) return;
    opening.textContent =
      'Still opening. After Headroom is updated, it works out every lot again once. Tens of thousands of lots take up to a minute. Nothing is lost if you close this page.';
  }, UNUSUAL_MS);
  onTakenOver((notice) => draw(<CannotOpen refusal={notice} />, page));
  // The books begin with the rows that stand there already, and not for a moment without them.
  const [look, folders] = await Promise.all([firstLook, BOOKS.test(location.hash) ? readFirstFolders() : []]);
  clearTimeout(patience);
  if (!look.ok) {
    draw(<CannotOpen refusal={look} />, page);
    return;
  }
  draw(
    <WorkspaceProvider first={look.value} onChanged={planAgain}>
      <App folders={folders} />
    </WorkspaceProvider>,
    page,
  );
  markLotsShown();
}

/** The background looks by itself every few minutes too, so one message that is lost does no harm. */
function planAgain(): void {
  askBackground(sendToBackground, 'plan-again', isDemo() ? { demo: true } : {}).catch((error: unknown) => {
    if (document.visibilityState === 'visible') reportError(error);
  });
}

const page = document.getElementById('page');
if (page !== null) {
  start(page).catch((error: unknown) => {
    draw(<CannotOpen refusal={{ reason: 'unexpected', message: String(error) }} />, page);
    reportError(error);
  });
}
