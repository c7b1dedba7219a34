import { createHash } from 'node:crypto';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import pkg from '../../package.json' with { type: 'json' };
import { bundleExtension, packageFiles } from '../build-extension.ts';
import { zipPackage } from '../zip-package.ts';

const FOLDER = 'dist/packages';

/**
 * `npm run package`: for each browser the zip that its store takes and that can be loaded by hand, and the SHA-256 sums of
 * both, into `dist/packages/`. The same sources give the same bytes.
 */
export async function run(flags: readonly string[]): Promise<number> {
  const folder = flags[0] ?? FOLDER;
  const bundle = await bundleExtension();
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  const sums: string[] = [];
  for (const browser of ['chromium', 'firefox'] as const) {
    const name = `headroom-${browser}-${pkg.version}.zip`;
    const zip = await zipPackage(packageFiles(bundle, browser, 'shipped'));
    await writeFile(path.join(folder, name), zip);
    sums.push(`${createHash('sha256').update(zip).digest('hex')}  ${name}`);
  }
  // In the form that `sha256sum --check` reads.
  await writeFile(path.join(folder, 'SHA256SUMS'), `${sums.join('\n')}\n`);
  for (const line of sums) console.log(line);
  console.log(`Wrote ${folder}/. What the stores ask for besides is in manifest/store/.`);
  return 0;
}
