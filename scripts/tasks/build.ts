import type { BrowserName, Variant } from '../../manifest/manifest.ts';
import { bundleExtension, writePackage } from '../build-extension.ts';
import { sizeReport, sizes } from '../size-budget.ts';

const PACKAGES: readonly [BrowserName, Variant, string][] = [
  ['chromium', 'shipped', 'dist/chromium'],
  ['chromium', 'test', 'dist/chromium-test'],
  ['firefox', 'shipped', 'dist/firefox'],
  ['firefox', 'test', 'dist/firefox-test'],
];

/** `npm run build`: both packages into dist/, with the variants the tests use beside them. Fails over a size budget. */
export async function run(): Promise<number> {
  const bundle = await bundleExtension();
  for (const [browser, variant, folder] of PACKAGES) await writePackage(bundle, browser, variant, folder);
  const { lines, tooLarge } = sizeReport(sizes(bundle));
  for (const line of lines) console.log(line);
  for (const sentence of tooLarge) console.error(sentence);
  console.log('Built dist/chromium and dist/firefox.');
  return tooLarge.length === 0 ? 0 : 1;
}
