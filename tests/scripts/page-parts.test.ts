import { expect, test } from 'vitest';
import { bundleExtension } from '../../scripts/build-extension.ts';
import { loadedBy } from '../../scripts/loaded-by.ts';

test('each page names all parts of its program in its head, once each, and none that comes later', async () => {
  const { files, metafile } = await bundleExtension();
  const pageText = (page: string): string => new TextDecoder().decode(files.get(page));
  const partsOf = (program: string): string[] =>
    [...loadedBy(metafile, program, false)].filter((file) => file.endsWith('.js') && file !== program).sort();

  const popup = pageText('popup/popup.html');
  const named = [...popup.matchAll(/<link rel="modulepreload" href="\.\.\/([^"]+)"/g)].map(([, file]) => file);
  expect(named.sort()).toEqual(partsOf('popup/main.js'));
  expect(named.length).toBeGreaterThan(1);
  expect(popup.indexOf('modulepreload')).toBeLessThan(popup.indexOf('src="main.js"'));

  // The companion page begins with one small file, which then asks for what stands here.
  const companion = pageText('options-page/index.html');
  expect(companion).not.toContain('modulepreload');
  expect(partsOf('options-page/first.js')).toEqual([]);
  const [program, style, ...later] = /<meta name="later" content="([^"]*)"/.exec(companion)?.[1]?.split(' ') ?? [];
  expect([program, style]).toEqual(['main.js', 'main.css']);
  expect(later.map((file) => file.replace('../', '')).sort()).toEqual(partsOf('options-page/main.js'));
  expect(later.length).toBeGreaterThan(1);
});
