import { gzipSync } from 'node:zlib';
import type { Bundle } from './build-extension.ts';
import { loadedBy } from './loaded-by.ts';

/** One thing that has to be small, in bytes as the browser loads them from disk (not compressed). */
interface Size {
  readonly what: string;
  readonly bytes: number;
  readonly gzipped: number;
  readonly limit: number;
}

const KB = 1000;

/**
 * How much is loaded before each part can begin. Set a little above what was needed when they were last looked at:
 * raise one only together with the reason for it.
 */
const LIMITS = {
  // With the schemas of what happens at a sale and after it, the rule that tells a lot seen again from a new one, and the
  // whole ladder of alerts, each of them in words; and what becomes of a sale, since its deadlines are alerts too. It puts
  // the list's first rows into words, for which it looks whether each listing fits its VIN and its earlier life, and what our
  // bid on it really is. A button of a notice decides by the same acts and questions as every screen (20 KB). 10 KB here, in
  // the popup, the page reader and the list are webextension-polyfill. What nobody can mean is told apart from what can be
  // worked out, so that one bad lot costs only itself (8 KB), and so is every reading of a close that is in doubt.
  // Where a close stood before it moved, who is on duty, and what an hour may hold (4 KB).
  // Corrections from own results change every max bid, so they are applied wherever one is worked out (4 KB, also below).
  // What the plan bids stands beside each max bid (2 KB, also below).
  // What a restore changes, and where it clashes (2 KB, also below).
  // One line of the books can be corrected, and what was undone is kept in sight (2 KB, also below).
  // The plan itself is made here, where no page waits for it: the recursion, what closings teach of the rivals, and what was
  // believed when each closed (48 KB); what is doubtful about its lots and its purse, in sentences (2 KB).
  // What may be recorded of the bank (2 KB, also in the popup and before the list works).
  // Lines of cars and kinds of sellers as groups of rivals, unseen bids, and what was planned at a close (3 KB).
  // The stores of what a team's server and devices witness (1 KB).
  // Whether there is a team, and the way to its program (2 KB).
  // The first folders of the books are put into words too: what was expected of a car, what is booked for it (16 KB).
  // Starts the plan's thread where it is a page (1 KB).
  // Who of a team is called first (1 KB).
  background: 381 * KB,
  // The store, the worksheet and the plan once more, for a thread of its own in Firefox; nobody waits for it.
  'plan thread': 300 * KB,
  // With the words of receipts and results, and of what each bid really is, which stand beside each lot there.
  // What may be recorded of the bank (2 KB).
  // The stores of what a team's server and devices witness (1 KB).
  // How this browser stands to its team (2 KB).
  // The store keeps the first folders (2 KB, also before the list works).
  // What a team's server and devices say of entries goes into evidence packs (1 KB, also below).
  popup: 305 * KB,
  // Loaded only where there is a team: the client of its server (160 KB), the JWE library, and the store with its schemas.
  // Asks the browser each time whether data may leave it, by the library that stands for both browsers (10 KB).
  'team program': 443 * KB,
  // Half of it is what others keep better than we could: the dates of a natural-language library (48 KB) and the schemas
  // that bound every value (26 KB). It is loaded from disk on the user's click and takes some ten milliseconds. It may grow
  // to what it takes to read pages that nobody here has written: what dealers and clerks call things, in four languages, and
  // the pages' own records (22 KB). What is pointed at says at once what will be asked (2 KB).
  // Facts in short sentences, small tables in cards, remarks of other cars, trails to a sale, and what stood where a lot's number
  // stands now (7 KB).
  'page reader': 298 * KB,
  // What is drawn before anything can be worked out, so it is to stay small: two thirds of it are style sheets.
  // Each row has a box to choose it and buttons to act in it, and its columns stand in a table of their own.
  // On a narrow screen its head is one line of groups (1 KB).
  // The first folders of the books, with their style sheet (7 KB).
  'companion page, its first rows': 27 * KB,
  // The list works out max bids, whether each listing fits its VIN and its earlier life, and how each close stands to the
  // busy hours, and what each bid really is; the store brings the schemas of all that may happen to a lot. A row acts by the
  // one rule of acts, with its questions, and a row that can't be worked out says why. Rows are chosen, grouped and counted; what
  // is done with them comes when the first one is pressed. Where a close stood before it moved, and who is on duty (3 KB).
  // A bar with Stop stands above every screen while something long goes on (1 KB). The store knows the time stamps of entries,
  // and which entry one is of (2 KB). Learn's place in the navigation, and the entries that what was believed follows from (1 KB).
  // The setup knows each vendor's terms (1 KB).
  // The table of all screens, and the places of a group below its word (5 KB).
  // What every screen leaves out on paper (2 KB).
  // What may be recorded of the bank (2 KB).
  // Bills that are due count for the Books' mark, and the setup knows resale certificates (2 KB).
  // How this browser stands to its team, at the head of every screen (3 KB).
  // What stands of the books until they are added up (4 KB).
  'companion page, before its list works': 427 * KB,
  // Never loaded at once: each screen comes when it is first opened. With the results, a lot's life and its evidence pack,
  // the Words page, and the doubts of a table that is brought in. Acts in the rows of the list and on many lots at once, a comparison side by side, and one-tap rows in Now.
  // The plan of duty and what is held back. Recon templates: their part of the setup, and how they are added (7 KB).
  // What a restore changes and where it clashes (5 KB). What reads the answer of a time-stamp authority, a library of DER, is
  // fetched only where there is one (152 KB).
  // What is owed to whom and when (22 KB).
  // What is missing from a month before it is closed, what is accrued, bills due wherever one looks, and certificates (30 KB).
  // The Plan screen with its purse and its picture (26 KB).
  // Learn: forecasts as they stood, their scores, where the money went, sold cars from a list, and the season of past sales in
  // the demo (40 KB).
  // Bank statements: a reader of OFX and of tables, the matching, and their screen (33 KB).
  // Averages of the review, under and over max apart (3 KB).
  // The Team screen, with QR codes (24 KB).
  // What stands of the books until they are added up (6 KB).
  // The same, and its check (4 KB).
  // “I have it”, on Now (2 KB).
  // Results as a file, certificates to renew, a second case of one reason (4 KB).
  // What the figures of won cars, folders, results and reviews mean (4 KB).
  'companion page, all screens': 1565 * KB,
} as const;

/** The size of each part against its limit; a font is shown late, so only programs and style sheets count. */
export function sizes(bundle: Bundle): readonly Size[] {
  const parts: Record<keyof typeof LIMITS, ReadonlySet<string>> = {
    background: loadedBy(bundle.metafile, 'background.js', false),
    'plan thread': loadedBy(bundle.metafile, 'plan-worker.js', false),
    popup: loadedBy(bundle.metafile, 'popup/main.js', false),
    'team program': loadedBy(bundle.metafile, 'team/program.js', false),
    'page reader': loadedBy(bundle.metafile, 'injected/reader.js', false),
    'companion page, its first rows': loadedBy(bundle.metafile, 'options-page/first.js', false),
    'companion page, before its list works': loadedBy(bundle.metafile, 'options-page/main.js', false),
    'companion page, all screens': loadedBy(bundle.metafile, 'options-page/main.js', true),
  };
  return Object.entries(LIMITS).map(([what, limit]) => {
    const contents = [...parts[what as keyof typeof LIMITS]].map((file) => bundle.files.get(file) ?? new Uint8Array());
    const sum = (measure: (content: Uint8Array) => number) => contents.reduce((total, c) => total + measure(c), 0);
    return { what, limit, bytes: sum((c) => c.length), gzipped: sum((c) => gzipSync(c).length) };
  });
}

/** One line a part, and a sentence for each that is too large. */
export function sizeReport(all: readonly Size[]): { readonly lines: readonly string[]; readonly tooLarge: string[] } {
  const kilo = (bytes: number) => `${(bytes / KB).toFixed(1)} KB`.padStart(9);
  return {
    lines: all.map((s) => `${s.what.padEnd(42)}${kilo(s.bytes)} of ${kilo(s.limit)}, gzipped ${kilo(s.gzipped)}`),
    tooLarge: all
      .filter((s) => s.bytes > s.limit)
      .map((s) => `${s.what} is over its size budget: ${kilo(s.bytes).trim()} of ${kilo(s.limit).trim()}.`),
  };
}
