import { expect } from 'vitest';
import type { Page, Target } from '../drivers/browser.ts';
import { waitUntil } from '../drivers/wait-until.ts';

/** What one goal of a day took. */
interface Counted {
  readonly goal: string;
  readonly what: string;
  readonly presses: number;
  readonly most: number;
}

/**
 * A hand that counts: a click, a tap, a key that acts, or a field that is filled in is one press each, however many digits it
 * has. Scrolling and looking are none.
 */
export class Hand {
  readonly #page: Page;
  #presses = 0;
  #last = 0;
  readonly #counted: Counted[] = [];

  constructor(page: Page) {
    this.#page = page;
  }

  async click(target: Target): Promise<void> {
    this.#presses += 1;
    await this.#page.click(target);
  }

  /** A click on what moves up when it is done: no hand presses the next one faster than a double press. */
  async tap(target: Target): Promise<void> {
    await waitUntil('the last press to settle', async () => performance.now() - this.#last > 400);
    await this.click(target);
    this.#last = performance.now();
  }

  async fill(target: Target, text: string): Promise<void> {
    this.#presses += 1;
    await this.#page.fill(target, text);
  }

  async choose(target: Target, label: string): Promise<void> {
    this.#presses += 1;
    await this.#page.choose(target, label);
  }

  async press(key: string): Promise<void> {
    this.#presses += 1;
    await this.#page.press(key);
  }

  /** Works towards one goal of the day, which may take `most` presses. */
  async goal(goal: string, what: string, most: number, work: () => Promise<void>): Promise<void> {
    this.#presses = 0;
    await work();
    this.#counted.push({ goal, what, presses: this.#presses, most });
    expect(this.#presses, `${goal}: ${what}`).toBeLessThanOrEqual(most);
  }

  /** The table of the day. */
  table(): string {
    const lines = this.#counted.map(
      ({ goal, what, presses, most }) => `${goal.padEnd(4)} ${what.padEnd(50)} ${presses} of ${most}`,
    );
    const sum = this.#counted.reduce((total, { presses }) => total + presses, 0);
    return [...lines, `${'all'.padEnd(55)} ${sum}`].join('\n');
  }
}
