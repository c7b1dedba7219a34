import type { ComponentChildren } from 'preact';
import type { Route } from './route.ts';
import './frame.css';

interface Place {
  readonly hash: string;
  readonly label: string;
  readonly screens: readonly Route['screen'][];
}

/** Where one goes every day, in the order of the week's work. */
const PLACES: readonly Place[] = [
  { hash: '#/lots', label: 'Lots', screens: ['lots', 'lot', 'history'] },
  { hash: '#/week', label: 'Week', screens: ['week'] },
  { hash: '#/now', label: 'Now', screens: ['now'] },
  { hash: '#/results', label: 'Results', screens: ['results'] },
  { hash: '#/todo', label: 'To do', screens: ['todo', 'won'] },
  { hash: '#/disputes', label: 'Disputes', screens: ['disputes', 'dispute', 'open-dispute'] },
  { hash: '#/books', label: 'Books', screens: ['books'] },
];

/** Where one goes now and then. They stand apart, so that the days' own row stays short. */
const TOOLS: readonly Place[] = [
  { hash: '#/add', label: 'Add lots', screens: ['add'] },
  { hash: '#/setup', label: 'Setup', screens: ['setup'] },
  { hash: '#/backup', label: 'Backup', screens: ['backup'] },
  { hash: '#/words', label: 'Words', screens: ['words'] },
];

/** Screens that fill the window and scroll in a part of their own, so that what is said at its foot covers nothing. */
const FILLS: ReadonlySet<Route['screen']> = new Set(['lots', 'now']);

interface FrameProps {
  readonly screen: Route['screen'];
  /** The store's clock. */
  readonly clock: ComponentChildren;
  /** What is asked or said above every screen. */
  readonly note?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** What stands around every screen: the name, where one can go, and the store's clock. */
export function Frame({ screen, clock, note, children }: FrameProps) {
  return (
    <>
      <button type="button" class="skip-link no-print" onClick={skipToMain}>
        Skip to the content
      </button>
      <header class="frame-head no-print">
        <a class="frame-name" href="#/lots">
          <Mark />
          <span>Headroom</span>
        </a>
        <nav aria-label="Screens">
          <Places places={PLACES} screen={screen} kind="daily" />
          <Places places={TOOLS} screen={screen} kind="tools" />
        </nav>
        {clock}
      </header>
      {note}
      <main id="main" tabIndex={-1} class={FILLS.has(screen) ? 'fills' : ''}>
        {children}
      </main>
    </>
  );
}

function Places({ places, screen, kind }: { places: readonly Place[]; screen: Route['screen']; kind: string }) {
  return (
    <div class={`frame-places ${kind}`}>
      {places.map(({ hash, label, screens }) => (
        <a key={hash} href={hash} aria-current={screens.includes(screen) ? 'page' : undefined}>
          {label}
        </a>
      ))}
    </div>
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
