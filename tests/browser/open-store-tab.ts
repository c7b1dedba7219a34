import { build } from 'esbuild';
import type { Browser, Page } from './drivers/browser.ts';

/** A tab of the extension that runs nothing but the store, open under `name`. */
export async function openStoreTab(browser: Browser, name: string): Promise<Page> {
  const page = await browser.open('bare-pages/bare.html');
  const { outputFiles } = await build({
    entryPoints: ['tests/browser/programs/store-program.ts'],
    bundle: true,
    format: 'iife',
    write: false,
  });
  for (const { text } of outputFiles) await page.addProgram(text);
  await page.run((wanted) => window.storeProgram.open(wanted), name);
  return page;
}
