import { readdirSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Media, Page } from './browser.ts';
import { DrivenSurface } from './driven-surface.ts';
import { keyActions } from './firefox-keys.ts';
import type { Marionette } from './marionette.ts';
import { waitUntil } from './wait-until.ts';

/** The name under which WebDriver hands over an element. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

export interface FirefoxTab {
  readonly marionette: Marionette;
  readonly handle: string;
  readonly downloads: string;
  readonly address: (fileOrUrl: string) => string;
}

export class FirefoxPage extends DrivenSurface implements Page {
  readonly #tab: FirefoxTab;

  constructor(tab: FirefoxTab) {
    super();
    this.#tab = tab;
  }

  url(): Promise<string> {
    return this.#here(async (m) => (await m.send<{ value: string }>('WebDriver:GetCurrentURL')).value);
  }

  async go(fileOrUrl: string): Promise<void> {
    await this.#here((m) => m.send('WebDriver:Navigate', { url: this.#tab.address(fileOrUrl) }));
  }

  async reload(): Promise<void> {
    await this.#here((m) => m.send('WebDriver:Refresh'));
  }

  run<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result> {
    return this.#here((m) => m.run<Result>(String(task), args));
  }

  /** Runs `task` in the browser's own window while this tab is the one in front. */
  runPrivileged<Result>(task: string, ...args: readonly unknown[]): Promise<Result> {
    return this.#here((m) => m.run<Result>(task, args, true));
  }

  async addProgram(source: string): Promise<void> {
    await this.#here((m) => m.run(`() => {${source}\n}`, []));
  }

  async press(key: string): Promise<void> {
    await this.#here((m) => m.send('WebDriver:PerformActions', { actions: keyActions(key) }));
  }

  async upload(css: string, ...files: readonly string[]): Promise<void> {
    await this.#here(async (m) => {
      const id = await find(m, css);
      await m.send('WebDriver:ElementSendKeys', { id, text: files.map((file) => path.resolve(file)).join('\n') });
    });
  }

  async download(action: () => Promise<void>): Promise<{ readonly name: string; readonly text: string }> {
    const before = new Set(readdirSync(this.#tab.downloads));
    await action();
    // A file that is still being written has a companion whose name ends in .part.
    const name = await waitUntil('a download', async () => {
      const now = readdirSync(this.#tab.downloads);
      return now.some((file) => file.endsWith('.part')) ? undefined : now.find((file) => !before.has(file));
    });
    return { name, text: readFileSync(path.join(this.#tab.downloads, name), 'utf8') };
  }

  async resize(width: number, height: number): Promise<void> {
    // A window can't be as narrow as a telephone, but the place a page has in it can.
    await this.runPrivileged(
      `async (width, height) => {
        const shown = window.gBrowser.selectedBrowser;
        for (const [side, length] of [["width", width], ["height", height]]) {
          for (const rule of [side, "min-" + side, "max-" + side]) shown.style.setProperty(rule, length + "px");
        }
      }`,
      width,
      height,
    );
    await this.until((w, h) => window.innerWidth === w && window.innerHeight === h, width, height);
  }

  async showAs({ dark = false, print = false }: Media): Promise<void> {
    await this.runPrivileged(
      `async (scheme, medium) => {
        const context = window.gBrowser.selectedBrowser.browsingContext.top;
        context.prefersColorSchemeOverride = scheme;
        context.mediumOverride = medium;
      }`,
      dark ? 'dark' : 'light',
      print ? 'print' : '',
    );
  }

  async screenshot(file: string): Promise<void> {
    const { value } = await this.#here((m) => m.send<{ value: string }>('WebDriver:TakeScreenshot', { full: true }));
    await writeFile(file, Buffer.from(value, 'base64'));
  }

  async toFront(): Promise<void> {
    await this.#tab.marionette.alone(() =>
      this.#tab.marionette.send('WebDriver:SwitchToWindow', { handle: this.#tab.handle, focus: true }),
    );
  }

  async close(): Promise<void> {
    await this.#here((m) => m.send('WebDriver:CloseWindow'));
  }

  protected async clickCss(css: string): Promise<void> {
    await this.#here(async (m) => m.send('WebDriver:ElementClick', { id: await find(m, css) }));
  }

  protected async fillCss(css: string, text: string): Promise<void> {
    await this.#here(async (m) => {
      const id = await find(m, css);
      await m.send('WebDriver:ElementClick', { id });
      await m.send('WebDriver:PerformActions', { actions: keyActions('Control+a') });
      await m.send('WebDriver:PerformActions', { actions: keyActions('Delete') });
      if (text !== '') await m.send('WebDriver:ElementSendKeys', { id, text });
    });
  }

  #here<Result>(work: (marionette: Marionette) => Promise<Result>): Promise<Result> {
    const { marionette, handle } = this.#tab;
    return marionette.alone(async () => {
      await marionette.send('WebDriver:SwitchToWindow', { handle, focus: true });
      return work(marionette);
    });
  }
}

async function find(marionette: Marionette, css: string): Promise<string> {
  const { value } = await marionette.send<{ value: Record<string, string> }>('WebDriver:FindElement', {
    using: 'css selector',
    value: css,
  });
  const id = value[ELEMENT];
  if (id === undefined) throw new Error(`Firefox gave no element for ${css}`);
  return id;
}
