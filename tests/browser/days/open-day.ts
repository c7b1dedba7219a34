import { build } from 'esbuild';
import type { Browser, Page } from '../drivers/browser.ts';

/** A tab of the extension that runs nothing but the program that fills the store with a day's lots. */
export async function openDayTab(browser: Browser): Promise<Page> {
  const page = await browser.open('bare-pages/bare.html');
  const entry = 'tests/browser/programs/day-program.ts';
  const { outputFiles } = await build({ entryPoints: [entry], bundle: true, format: 'iife', write: false });
  for (const { text } of outputFiles) await page.addProgram(text);
  return page;
}
