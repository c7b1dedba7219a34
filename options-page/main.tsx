import '../src/ui/look.css';
import { render } from 'preact';
import { sendToBackground } from '../src/browser/messaging.ts';
import { askBackground } from '../src/messages/ask-background.ts';
import { openThisStore } from '../src/ui/open-this-store.ts';
import { App } from './app.tsx';
import { CannotOpen } from './cannot-open.tsx';
import { firstLook, WorkspaceProvider } from './workspace-provider.tsx';

/** Opens the store and draws the screens over it; what goes wrong on the way is said on the page. */
async function start(page: HTMLElement): Promise<void> {
  const opened = await openThisStore((notice) => render(<CannotOpen refusal={notice} />, page));
  if (!opened.ok) {
    render(<CannotOpen refusal={opened} />, page);
    return;
  }
  const store = opened.value;
  const first = await firstLook(store);
  document.getElementById('opening')?.remove();
  render(
    <WorkspaceProvider store={store} first={first} onChanged={planAgain}>
      <App />
    </WorkspaceProvider>,
    page,
  );
}

/** The background looks by itself every few minutes too, so one message that is lost does no harm. */
function planAgain(): void {
  askBackground(sendToBackground, 'plan-again', {}).catch((error: unknown) => {
    if (document.visibilityState === 'visible') reportError(error);
  });
}

const page = document.getElementById('page');
if (page !== null) {
  start(page).catch((error: unknown) => {
    render(<CannotOpen refusal={{ reason: 'unexpected', message: String(error) }} />, page);
    reportError(error);
  });
}
