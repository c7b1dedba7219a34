import { clickInside, fillInside } from './act-in-page.ts';
import type { Popup } from './browser.ts';
import { DrivenSurface } from './driven-surface.ts';
import type { Marionette } from './marionette.ts';

/** Finds the popup in the browser's own window; used inside the privileged tasks below. */
const FIND = `[...document.querySelectorAll("browser")].find(
  (one) => one.getAttribute("webextension-view-type") === "popup" && one.currentURI?.spec.startsWith("moz-extension:"))`;

/** The popup is no tab, so it is reached from the browser's window, by the actor that remote control has in every page. */
export class FirefoxPopup extends DrivenSurface implements Popup {
  readonly #marionette: Marionette;

  constructor(marionette: Marionette) {
    super();
    this.#marionette = marionette;
  }

  async run<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result> {
    const script = `
      const done = arguments[arguments.length - 1];
      (async () => (${task})(...${JSON.stringify(args)}))().then(
        (value) => done(JSON.stringify({ value })),
        (error) => done(JSON.stringify({ failure: String(error) })));`;
    const answer = await this.#privileged<string>(
      `async (script) => {
        const popup = ${FIND};
        if (!popup) throw new Error("the popup is not open");
        const actor = popup.browsingContext.currentWindowGlobal.getActor("MarionetteCommands");
        return actor.executeScript(script, [], { timeout: 20000, async: true, newSandbox: true });
      }`,
      script,
    );
    const { value, failure } = JSON.parse(answer) as { value: Result; failure?: string };
    if (failure !== undefined) throw new Error(failure);
    return value;
  }

  isOpen(): Promise<boolean> {
    return this.#privileged(`async () => ${FIND} !== undefined`);
  }

  async close(): Promise<void> {
    await this.#privileged(`async () => { ${FIND}?.closest("panel")?.hidePopup(); }`);
  }

  protected async clickCss(css: string): Promise<void> {
    await this.run(clickInside, css);
  }

  protected async fillCss(css: string, text: string): Promise<void> {
    await this.run(fillInside, css, text);
  }

  #privileged<Result>(task: string, ...args: readonly unknown[]): Promise<Result> {
    return this.#marionette.alone(() => this.#marionette.run<Result>(task, args, true));
  }
}
