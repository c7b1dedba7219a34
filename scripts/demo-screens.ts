import type { Instant } from '../src/domain/time/instant.ts';
import { type ScreenVisit, screenVisits } from './screen-visits.ts';

/** A screen that gets its picture taken, in every width and light. */
export interface DemoScreen extends Omit<ScreenVisit, 'hash'> {
  /** Where it is in the extension. */
  readonly address: string;
  /** Shown before the demo's week is loaded, when there is nothing yet. */
  readonly empty?: true;
  /** A popup is never as wide as a page. */
  readonly narrow?: true;
  /** What is opened before the picture is taken, by its CSS. */
  readonly open?: string;
}

const PAGE = 'options-page/index.html';
const POPUP = { address: 'popup/popup.html', follow: [], narrow: true } as const;
const EMPTY = ['lots', 'plan', 'start'];

/** Every screen with the demo's week, some before there is anything, and the popup. */
export function demoScreens(now: Instant): readonly DemoScreen[] {
  const screens = screenVisits(now).map(({ hash, ...visit }): DemoScreen => ({ ...visit, address: PAGE + hash }));
  const open = screens
    .filter(({ name }) => name === 'worksheet')
    .map((s) => ({ ...s, name: `${s.name}-open`, open: '.fold' }));
  return [
    ...EMPTY.map(
      (screen): DemoScreen => ({ name: `${screen}-empty`, address: `${PAGE}#/${screen}`, follow: [], empty: true }),
    ),
    { ...POPUP, name: 'popup-empty', empty: true },
    ...screens,
    ...open,
    { ...POPUP, name: 'popup' },
  ];
}

/** The width of a telephone held upright, in CSS pixels. */
export const NARROW = 400;

/** How each screen is looked at. */
export const DEMO_VIEWS = [
  { name: 'wide-light', width: 1280, height: 800, dark: false, print: false },
  { name: 'wide-dark', width: 1280, height: 800, dark: true, print: false },
  { name: 'narrow-light', width: NARROW, height: 800, dark: false, print: false },
  { name: 'narrow-dark', width: NARROW, height: 800, dark: true, print: false },
  // About the width of a letter sheet between its margins, at 96 pixels an inch.
  { name: 'print', width: 720, height: 960, dark: false, print: true },
] as const;
