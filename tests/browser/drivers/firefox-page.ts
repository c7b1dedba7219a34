import { readdirSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fillInside, middleOf } from './act-in-page.ts';
import type { Media, Page } from './browser.ts';
import { DrivenSurface } from './driven-surface.ts';
import { keyActions } from './firefox-keys.ts';
import type { Marionette } from './marionette.ts';
import { waitUntil } from './wait-until.ts';

/** The name under which WebDriver hands over an element. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';
const LONGEST_TYPED = 200;

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

  async clickOver(css: string): Promise<void> {
    const { x, y } = await this.run(middleOf, css);
    const actions = [
      { type: 'pointerMove', x: Math.round(x), y: Math.round(y) },
      { type: 'pointerDown', button: 0 },
      { type: 'pointerUp', button: 0 },
    ];
    await this.#here((m) =>
      m.send('WebDriver:PerformActions', { actions: [{ type: 'pointer', id: 'mouse', actions }] }),
    );
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
    // A file that is still being written has a companion whose name ends in .part, or bears another name for a moment:
    // it is there once two looks agree on a name and on what is in it.
    let seen: { readonly name: string; readonly text: string } | undefined;
    return waitUntil('a download', async () => {
      const earlier = seen;
      seen = undefined;
      const now = readdirSync(this.#tab.downloads);
      const name = now.find((file) => !before.has(file));
      if (name === undefined || now.some((file) => file.endsWith('.part'))) return undefined;
      seen = { name, text: readFileSync(path.join(this.#tab.downloads, name), 'utf8') };
      return seen.text !== '' && earlier?.name === name && earlier.text === seen.text ? seen : undefined;
    });
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
    await this.#here(async (m) => {
      const [left] = await m.send<readonly string[]>('WebDriver:CloseWindow');
      // Whatever is asked next is asked from some window that is still there.
      if (left !== undefined) await m.send('WebDriver:SwitchToWindow', { handle: left });
    });
  }

  protected async clickCss(css: string): Promise<void> {
    await this.#here(async (m) => m.send('WebDriver:ElementClick', { id: await find(m, css) }));
  }

  protected async fillCss(css: string, text: string): Promise<void> {
    // A page of text is pasted by a user; typed key by key it would take a quarter of a minute.
    if (text.length > LONGEST_TYPED) {
      await this.run(fillInside, css, text);
      return;
    }
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
