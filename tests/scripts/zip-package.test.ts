import { readFileSync } from 'node:fs';
import JSZip from 'jszip';
import { expect, test } from 'vitest';
import { bundleExtension, packageFiles } from '../../scripts/build-extension.ts';
import { zipPackage } from '../../scripts/zip-package.ts';

test('a package is built twice and comes out with the same bytes, and holds just what the build made: nothing of the tests, nothing of this machine', async () => {
  const both = [await bundleExtension(), await bundleExtension()];
  for (const browser of ['chromium', 'firefox'] as const) {
    const [files, again] = both.map((bundle) => packageFiles(bundle, browser, 'shipped'));
    if (files === undefined || again === undefined) throw new Error('two bundles were made');
    const zip = await zipPackage(files);
    // The other way round, so that the order in which the files came about does not count.
    expect(Buffer.compare(zip, await zipPackage(new Map([...again].reverse())))).toBe(0);
    const opened = await JSZip.loadAsync(zip, { checkCRC32: true });
    expect(Object.keys(opened.files)).toEqual([...files.keys()].sort());
    for (const [place, contents] of files) {
      const entry = opened.file(place);
      expect(Buffer.compare((await entry?.async('uint8array')) ?? Buffer.of(), contents), place).toBe(0);
      expect(entry?.date).toEqual(new Date(Date.UTC(1980, 0, 1)));
    }
    expect([...files.keys()].filter((place) => place.startsWith('bare-pages'))).toEqual([]);
    for (const [place, contents] of files) expect(Buffer.from(contents).includes(process.cwd()), place).toBe(false);
    const manifest = JSON.parse((await opened.file('manifest.json')?.async('text')) ?? '');
    expect(manifest).not.toHaveProperty('key');
    expect(manifest).not.toHaveProperty('host_permissions');
    expect(manifest.version).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
  }
});
