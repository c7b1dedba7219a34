import type { ComponentChildren } from 'preact';
import type { ScreenCounts } from '../../src/views/counts/screen-counts.ts';
import { GROUPS } from './places.ts';
import { PlacesOf } from './places-of.tsx';
import type { Route } from './route.ts';
import './frame.css';

/** Screens that fill the window and scroll in a part of their own, so that what is said at its foot covers nothing. */
const FILLS: ReadonlySet<Route['screen']> = new Set(['lots', 'now']);

export interface FrameProps {
  readonly screen: Route['screen'];
  /** The store's clock. */
  readonly clock: ComponentChildren;
  /** What is asked or said above every screen. */
  readonly note?: ComponentChildren;
  /** What waits on the screens, once it is known. */
  readonly counts?: ScreenCounts;
  readonly children: ComponentChildren;
}

/** What stands around every screen: the name, where one can go, and the store's clock. */
export function Frame({ screen, clock, note, counts = {}, children }: FrameProps) {
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
        <nav aria-label="Screens" class="frame-nav">
          {GROUPS.map((group) => (
            <PlacesOf key={group.name} group={group} screen={screen} counts={counts} />
          ))}
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
