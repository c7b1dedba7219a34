import { expect, test } from 'vitest';
import { bundleExtension } from '../../scripts/build-extension.ts';
import { loadedBy } from '../../scripts/loaded-by.ts';

test('each page names all parts of its program in its head, once each, and none that comes later', async () => {
  const { files, metafile } = await bundleExtension();
  for (const [page, entry] of [
    ['options-page/index.html', 'options-page/main.js'],
    ['popup/popup.html', 'popup/main.js'],
  ] as const) {
    const html = new TextDecoder().decode(files.get(page));
    const named = [...html.matchAll(/<link rel="modulepreload" href="\.\.\/([^"]+)"/g)].map(([, file]) => file);
    const parts = [...loadedBy(metafile, entry, false)].filter((file) => file.endsWith('.js') && file !== entry);
    expect(named.sort(), page).toEqual(parts.sort());
    expect(named.length, page).toBeGreaterThan(1);
    expect(html.indexOf('modulepreload')).toBeLessThan(html.indexOf(`src="main.js"`));
  }
});
