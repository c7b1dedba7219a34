import type { Surface, Target } from './browser.ts';
import { chooseMarked, countVisible, markElement, readMarked, showsWords } from './find-element.ts';
import { waitUntil } from './wait-until.ts';

let marks = 0;

/** What a user does on any page, on top of the three things each browser does in its own way. */
export abstract class DrivenSurface implements Surface {
  abstract run<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result>;
  protected abstract clickCss(css: string): Promise<void>;
  protected abstract fillCss(css: string, text: string): Promise<void>;
  abstract close(): Promise<void>;

  until<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<NonNullable<Result>> {
    const what = `${task.name || String(task).slice(0, 200)} (${JSON.stringify(args).slice(0, 200)})`;
    return waitUntil(what, () => this.run(task, ...args));
  }

  async click(target: Target): Promise<void> {
    await this.#act(target, (css) => this.clickCss(css));
  }

  async fill(target: Target, text: string): Promise<void> {
    await this.#act(target, (css) => this.fillCss(css, text));
  }

  async choose(target: Target, label: string): Promise<void> {
    const mark = await this.#mark(target);
    await waitUntil(`the choice "${label}" in ${words(target)}`, () => this.run(chooseMarked, mark, label));
  }

  async text(target: Target): Promise<string> {
    return this.run(readMarked, await this.#mark(target));
  }

  async sees(text: string): Promise<void> {
    await waitUntil(`the page to show "${text}"`, () => this.run(showsWords, text));
  }

  count(css: string): Promise<number> {
    return this.run(countVisible, css);
  }

  async #mark(target: Target): Promise<string> {
    const mark = String(++marks);
    await waitUntil(words(target), () => this.run(markElement, target, mark));
    return mark;
  }

  /** A page may draw itself anew between the look and the act, so a failed act looks again. */
  async #act(target: Target, act: (css: string) => Promise<void>): Promise<void> {
    await waitUntil(`${words(target)} to take the action`, async () => {
      await act(`[data-test-mark="${await this.#mark(target)}"]`);
      return true;
    });
  }
}

function words(target: Target): string {
  return typeof target === 'string' ? target : Object.entries(target).flat().join(' ');
}
