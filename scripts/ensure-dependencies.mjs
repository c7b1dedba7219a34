import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';

const STAMP = 'node_modules/.installed-for';

/**
 * Installs the packages of package-lock.json unless exactly these are installed for this Node version already.
 * Ends the process with a sentence when npm fails.
 */
export function ensureDependencies() {
  const wanted = createHash('sha256').update(readFileSync('package-lock.json')).update(process.version).digest('hex');
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted) return;

  console.log('Installing the npm packages …');
  // Under NODE_ENV=production npm would leave out the tools without --include=dev.
  const wish = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  // The npm that runs us is used again, so that it need not be on the PATH.
  const npm = process.env.npm_execpath;
  const stdio = ['ignore', 'inherit', 'inherit'];
  const { status, error } = npm
    ? spawnSync(process.execPath, [npm, ...wish], { stdio })
    : spawnSync('npm', wish, { stdio });
  if (status !== 0) {
    console.error(`The npm packages could not be installed${error ? ` (${error.message})` : ''}. See the lines above.`);
    process.exit(1);
  }
  writeFileSync(STAMP, wanted);
}
