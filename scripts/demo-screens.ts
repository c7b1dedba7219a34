/** One picture the demo takes, in every width and light. */
export interface DemoScreen {
  /** The beginning of the picture's file name. */
  readonly name: string;
  /** Where it is in the extension; `FIRST_LOT` stands for the id of the lot at the top of the watchlist. */
  readonly address: string;
}

export const FIRST_LOT = 'FIRST_LOT';

const PAGE = 'options-page/index.html';

export const DEMO_SCREENS: readonly DemoScreen[] = [
  { name: 'lots', address: `${PAGE}#/lots` },
  { name: 'worksheet', address: `${PAGE}#/lot/${FIRST_LOT}` },
  { name: 'add', address: `${PAGE}#/add` },
  { name: 'setup', address: `${PAGE}#/setup` },
  { name: 'backup', address: `${PAGE}#/backup` },
  { name: 'popup', address: 'popup/popup.html' },
];

/** How each screen is looked at. A telephone's width, and a laptop's. */
export const DEMO_VIEWS = [
  { name: 'wide-light', width: 1280, height: 800, dark: false, print: false },
  { name: 'wide-dark', width: 1280, height: 800, dark: true, print: false },
  { name: 'narrow-light', width: 400, height: 800, dark: false, print: false },
  { name: 'narrow-dark', width: 400, height: 800, dark: true, print: false },
  // About the width of a letter sheet between its margins, at 96 pixels an inch.
  { name: 'print', width: 720, height: 960, dark: false, print: true },
] as const;
