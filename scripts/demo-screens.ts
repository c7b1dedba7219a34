/** A screen that gets its picture taken, in every width and light. */
export interface DemoScreen {
  /** The beginning of the picture's file name. */
  readonly name: string;
  /** Where it is in the extension; `FIRST_LOT` stands for the id of the lot at the top of the watchlist. */
  readonly address: string;
  /** Shown before the demo's week is loaded, when there is nothing yet. */
  readonly empty?: true;
  /** A popup is never as wide as a page. */
  readonly narrow?: true;
}

export const FIRST_LOT = 'FIRST_LOT';

const PAGE = 'options-page/index.html';

export const DEMO_SCREENS: readonly DemoScreen[] = [
  { name: 'lots-empty', address: `${PAGE}#/lots`, empty: true },
  { name: 'popup-empty', address: 'popup/popup.html', empty: true, narrow: true },
  { name: 'lots', address: `${PAGE}#/lots` },
  { name: 'worksheet', address: `${PAGE}#/lot/${FIRST_LOT}` },
  { name: 'add', address: `${PAGE}#/add` },
  { name: 'backup', address: `${PAGE}#/backup` },
  ...['store', 'venues', 'fees', 'holding', 'titles', 'busy', 'alerts'].map((part) => ({
    name: `setup-${part}`,
    address: `${PAGE}#/setup/${part}`,
  })),
  { name: 'popup', address: 'popup/popup.html', narrow: true },
];

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
