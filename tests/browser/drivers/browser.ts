import type { BrowserName } from '../../../manifest/manifest.ts';

/**
 * What a browser test may do, the same in Chromium and in Firefox. Tests speak in what a user sees and does, and wait for
 * conditions, never for a time.
 */
export interface Browser {
  readonly name: BrowserName;
  /** The address of a file of the extension, such as `options-page/index.html#/lots`. */
  url(file: string): string;
  /** Opens a file of the extension, or a whole http(s) address, in a new tab in front. */
  open(fileOrUrl: string): Promise<Page>;
  /** The first tab whose address starts with this file of the extension or this whole address; waits until there is one. */
  pageAt(fileOrUrl: string): Promise<Page>;
  /** How many tabs show such an address now. */
  countPages(fileOrUrl: string): Promise<number>;
  /**
   * Presses the toolbar button while `page` is in front, so that the extension gets its access to that page as from a user,
   * and gives back the popup that opens.
   */
  clickToolbarButton(page: Page): Promise<Popup>;
  /** The popup that the extension itself opens; waits until there is one. */
  openedPopup(patienceMs?: number): Promise<Popup>;
  /** Kills the background whatever it is doing. An event that waits for it may start another at once. */
  killBackground(): Promise<void>;
  /** Ends the background as the browser does when it has been idle; the next event starts it anew. */
  stopBackground(): Promise<void>;
  backgroundRuns(): Promise<boolean>;
  /** The ids of the notices on the screen. */
  noticeIds(): Promise<readonly string[]>;
  clickNotice(id: string): Promise<void>;
  /** Presses a notice's button, counted from 0. False where the browser has no buttons on notices. */
  pressNoticeButton(id: string, index: number): Promise<boolean>;
  /** Runs `task` on a page of the extension that has no program of its own, to ask the browser's own interfaces. */
  ask<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result>;
  /** Quits, or is killed in the middle of whatever it does, and starts again with the same profile. Every page is gone. */
  restart(how?: 'quit' | 'killed'): Promise<void>;
  /** Errors that the extension's pages and background have reported since the last call, uncaught ones included. */
  takeComplaints(): Promise<readonly string[]>;
  close(): Promise<void>;
}

/** What to act on: the words a user reads, or a CSS selector. Hidden elements are never meant. */
export type Target =
  | string
  | { readonly button: string }
  | { readonly link: string }
  | { readonly field: string }
  | { readonly text: string };

export interface Media {
  readonly dark?: boolean;
  readonly print?: boolean;
}

/** Something that shows a page. Every action waits until its target is there, and fails with the target's name in the end. */
export interface Surface {
  /**
   * Runs `task` in the page. It travels as text, so it can use nothing from around it but its arguments; these and the
   * result travel as JSON.
   */
  run<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result>;
  /** Runs `task` again and again until what it gives back is truthy, and gives that back. */
  until<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<NonNullable<Result>>;
  click(target: Target): Promise<void>;
  /** Replaces what a field holds. */
  fill(target: Target, text: string): Promise<void>;
  /** Chooses the option of a list that reads `label`. */
  choose(target: Target, label: string): Promise<void>;
  /** The text of the target as a user reads it, white space made single. */
  text(target: Target): Promise<string>;
  /** Waits until the page shows `words` anywhere. */
  sees(words: string): Promise<void>;
  /** How many visible elements match. */
  count(css: string): Promise<number>;
  close(): Promise<void>;
}

/** What the toolbar button opens. A browser lets nobody click or type there from outside, so the page itself does it. */
export interface Popup extends Surface {
  isOpen(): Promise<boolean>;
}

/** One tab, clicked and typed into as by a user. */
export interface Page extends Surface {
  url(): Promise<string>;
  /** Navigates this tab to a file of the extension or a whole address. */
  go(fileOrUrl: string): Promise<void>;
  reload(): Promise<void>;
  /** Runs a whole program in the page, such as a library. */
  addProgram(source: string): Promise<void>;
  /** Presses the mouse over the middle of an element, whatever lies on top of it there. */
  clickOver(css: string): Promise<void>;
  /** Presses a key where the focus is: `Enter`, `Shift+Tab`, `Control+a`. */
  press(key: string): Promise<void>;
  /** Hands files to a file field, which may be hidden. */
  upload(css: string, ...files: readonly string[]): Promise<void>;
  /** Does `action` and gives back the file that gets downloaded by it. */
  download(action: () => Promise<void>): Promise<{ readonly name: string; readonly text: string }>;
  /** Size of what is shown of the page, in CSS pixels. */
  resize(width: number, height: number): Promise<void>;
  showAs(media: Media): Promise<void>;
  screenshot(file: string): Promise<void>;
  /** Brings the tab to the front. */
  toFront(): Promise<void>;
}
