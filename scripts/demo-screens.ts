/** A screen that gets its picture taken, in every width and light. */
export interface DemoScreen {
  /** The beginning of the picture's file name. */
  readonly name: string;
  /** Where it is in the extension; `FIRST_LOT` and `FULL_DAY` stand for what only the demo knows. */
  readonly address: string;
  /** Shown before the demo's week is loaded, when there is nothing yet. */
  readonly empty?: true;
  /** A popup is never as wide as a page. */
  readonly narrow?: true;
  /** What is opened before the picture is taken, by its CSS. */
  readonly open?: string;
  /** The links that lead on to it, by their CSS, where only the demo knows its address. */
  readonly follow?: readonly string[];
}

/** Stands for the id of the lot at the top of the watchlist. */
export const FIRST_LOT = 'FIRST_LOT';
/** Stands for the date on which most lots of the demo close. */
export const FULL_DAY = 'FULL_DAY';

const DISPUTE = '.dispute-row a[href^="#/dispute/"]';
const PAGE = 'options-page/index.html';

export const DEMO_SCREENS: readonly DemoScreen[] = [
  { name: 'lots-empty', address: `${PAGE}#/lots`, empty: true },
  { name: 'start', address: `${PAGE}#/start`, empty: true },
  { name: 'popup-empty', address: 'popup/popup.html', empty: true, narrow: true },
  { name: 'lots', address: `${PAGE}#/lots` },
  { name: 'now', address: `${PAGE}#/now` },
  { name: 'plan-empty', address: `${PAGE}#/plan`, empty: true },
  { name: 'plan', address: `${PAGE}#/plan` },
  { name: 'worksheet', address: `${PAGE}#/lot/${FIRST_LOT}` },
  { name: 'worksheet-open', address: `${PAGE}#/lot/${FIRST_LOT}`, open: '.fold' },
  { name: 'history', address: `${PAGE}#/disputes`, follow: [DISPUTE, 'a[href^="#/history/"]'] },
  { name: 'results', address: `${PAGE}#/results` },
  { name: 'results-missing', address: `${PAGE}#/results/missing` },
  { name: 'week', address: `${PAGE}#/week` },
  { name: 'day', address: `${PAGE}#/week/${FULL_DAY}` },
  { name: 'add', address: `${PAGE}#/add` },
  { name: 'books-monday', address: `${PAGE}#/books/monday` },
  { name: 'books', address: `${PAGE}#/books` },
  { name: 'books-folder', address: `${PAGE}#/books`, follow: ['main a[href^="#/books/0"]'] },
  { name: 'books-invoices', address: `${PAGE}#/books/invoices` },
  { name: 'books-payables', address: `${PAGE}#/books/payables` },
  { name: 'books-share', address: `${PAGE}#/books/share` },
  { name: 'books-sold', address: `${PAGE}#/books/sold` },
  { name: 'books-month', address: `${PAGE}#/books/month` },
  { name: 'books-review', address: `${PAGE}#/books/review` },
  { name: 'learn', address: `${PAGE}#/learn` },
  { name: 'learn-money', address: `${PAGE}#/learn/money` },
  { name: 'learn-misses', address: `${PAGE}#/learn/misses` },
  { name: 'learn-groups', address: `${PAGE}#/learn/groups` },
  { name: 'backup', address: `${PAGE}#/backup` },
  { name: 'learn-corrections', address: `${PAGE}#/learn/corrections` },
  ...['store', 'venues', 'fees', 'recon', 'holding', 'titles', 'busy', 'alerts', 'estimating', 'sites', 'accounts'].map(
    (part) => ({
      name: `setup-${part}`,
      address: `${PAGE}#/setup/${part}`,
    }),
  ),
  { name: 'todo', address: `${PAGE}#/todo` },
  { name: 'won', address: `${PAGE}#/todo`, follow: ['.todo-row a[href^="#/won/"]'] },
  { name: 'disputes', address: `${PAGE}#/disputes` },
  { name: 'dispute', address: `${PAGE}#/disputes`, follow: [DISPUTE] },
  { name: 'open-dispute', address: `${PAGE}#/open-dispute` },
  { name: 'setup-after', address: `${PAGE}#/setup/after` },
  { name: 'words', address: `${PAGE}#/words/max-bid` },
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
