import type { ComponentChildren } from 'preact';
import { useWorkspace } from '../src/ui/workspace.ts';
import type { Route } from './route.ts';
import { StoreClock } from './store-clock.tsx';
import './frame.css';

const PLACES = [
  { hash: '#/lots', label: 'Lots', screens: ['lots', 'lot'] },
  { hash: '#/add', label: 'Add lots', screens: ['add'] },
  { hash: '#/setup', label: 'Setup', screens: ['setup'] },
  { hash: '#/backup', label: 'Keep', screens: ['backup'] },
] as const satisfies readonly { hash: string; label: string; screens: readonly Route['screen'][] }[];

/** What stands around every screen: the name, where one can go, and the store's clock. */
export function Frame({ screen, children }: { screen: Route['screen']; children: ComponentChildren }) {
  const { setup } = useWorkspace();
  return (
    <>
      <button type="button" class="skip-link no-print" onClick={skipToMain}>
        Skip to the content
      </button>
      <header class="frame-head no-print">
        <a class="frame-name" href="#/lots">
          <Mark />
          Headroom
        </a>
        <nav aria-label="Screens">
          {PLACES.map((place) => (
            <a
              key={place.hash}
              href={place.hash}
              aria-current={(place.screens as readonly string[]).includes(screen) ? 'page' : undefined}
            >
              {place.label}
            </a>
          ))}
        </nav>
        <StoreClock zone={setup.store.zone} name={setup.store.name} />
      </header>
      <main id="main" tabIndex={-1}>
        {children}
      </main>
    </>
  );
}

/** The hash belongs to the screens, so the jump is made by hand. */
function skipToMain() {
  document.getElementById('main')?.focus();
}

/** Steps going down under a line: what is left below the ceiling. */
function Mark() {
  return (
    <svg class="frame-mark" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      <path d="M2 4h20" stroke="currentColor" stroke-width="2.5" />
      <path d="M2 9h6v5h6v5h8" fill="none" stroke="currentColor" stroke-width="2.5" />
    </svg>
  );
}
