import { build } from 'esbuild';
import type { Browser, Page } from './browser.ts';

/** A tab of the extension that has `clockProgram` and no screen. */
export async function openClockTab(browser: Browser): Promise<Page> {
  const page = await browser.open('bare-pages/bare.html');
  const entry = 'tests/browser/programs/clock-program.ts';
  const { outputFiles } = await build({ entryPoints: [entry], bundle: true, format: 'iife', write: false });
  for (const { text } of outputFiles) await page.addProgram(text);
  return page;
}
