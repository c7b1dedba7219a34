import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';

/**
 * Takes the one place out of Preact that parses a string as HTML (for `dangerouslySetInnerHTML`, which nobody here uses), so
 * that no text from a sale's page can ever become markup, and so that web-ext's linter has nothing to warn of.
 * Fails the build when Preact has changed in a way that this no longer fits.
 */
export const noInnerHtml: Plugin = {
  name: 'no-inner-html',
  setup(build) {
    build.onLoad({ filter: /[\\/]preact[\\/]dist[\\/]preact\.mjs$/ }, async ({ path }) => ({
      contents: withoutInnerHtml(await readFile(path, 'utf8')),
      loader: 'js',
    }));
  },
};

/** Preact's text with its assignment to `innerHTML` replaced by one to `textContent`. Throws when that can't be done. */
export function withoutInnerHtml(preact: string): string {
  const mended = preact.replace(/([\w$]+)\.innerHTML=([\w$]+)\.__html/, '$1.textContent=$2.__html');
  if (mended === preact || /\.(inner|outer)HTML\s*=[^=]|insertAdjacentHTML/.test(mended)) {
    throw new Error('Preact sets innerHTML in another way than before: look at scripts/no-inner-html.ts.');
  }
  return mended;
}
