import { readFile } from 'node:fs/promises';
import type { Page as PlaywrightPage } from 'playwright-core';
import { middleOf } from './act-in-page.ts';
import type { Media, Page } from './browser.ts';
import { DrivenSurface } from './driven-surface.ts';

/** How long one action may wait for its element to be ready; the caller tries again. */
const ACTION_MS = 3_000;

export class ChromiumPage extends DrivenSurface implements Page {
  readonly #page: PlaywrightPage;
  readonly #address: (fileOrUrl: string) => string;

  constructor(page: PlaywrightPage, address: (fileOrUrl: string) => string) {
    super();
    this.#page = page;
    this.#address = address;
  }

  /** The tab as the driver underneath knows it. */
  get inner(): PlaywrightPage {
    return this.#page;
  }

  async url(): Promise<string> {
    return this.#page.url();
  }

  async go(fileOrUrl: string): Promise<void> {
    await this.#page.goto(this.#address(fileOrUrl));
  }

  async reload(): Promise<void> {
    await this.#page.reload();
  }

  run<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result> {
    return this.#page.evaluate(`(${task})(...${JSON.stringify(args)})`);
  }

  async addProgram(source: string): Promise<void> {
    await this.#page.evaluate(`(() => {${source}\n})()`);
  }

  async clickOver(css: string): Promise<void> {
    const { x, y } = await this.run(middleOf, css);
    await this.#page.mouse.click(x, y);
  }

  async press(key: string): Promise<void> {
    await this.#page.keyboard.press(key);
  }

  async upload(css: string, ...files: readonly string[]): Promise<void> {
    await this.#page.setInputFiles(css, files);
  }

  async download(action: () => Promise<void>): Promise<{ readonly name: string; readonly text: string }> {
    // A browser saves a second file only within some seconds of a press. A busy machine may take longer to write it: press again.
    const saved = () => Promise.all([this.#page.waitForEvent('download', { timeout: 15_000 }), action()]);
    const [download] = await saved().catch(saved);
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
  }

  async resize(width: number, height: number): Promise<void> {
    await this.#page.setViewportSize({ width, height });
  }

  async showAs({ dark = false, print = false }: Media): Promise<void> {
    await this.#page.emulateMedia({ colorScheme: dark ? 'dark' : 'light', media: print ? 'print' : 'screen' });
  }

  async screenshot(file: string): Promise<void> {
    await this.#page.screenshot({ path: file, fullPage: true });
  }

  async toFront(): Promise<void> {
    await this.#page.bringToFront();
  }

  async close(): Promise<void> {
    await this.#page.close();
  }

  protected async clickCss(css: string): Promise<void> {
    await this.#page.click(css, { timeout: ACTION_MS });
  }

  protected async fillCss(css: string, text: string): Promise<void> {
    await this.#page.fill(css, text, { timeout: ACTION_MS });
  }
}
