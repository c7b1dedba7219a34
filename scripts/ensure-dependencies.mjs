import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

/** What npm writes as the last thing of an installation: what lies in node_modules. */
const INSTALLED = 'node_modules/.package-lock.json';

/** Installs the packages of package-lock.json unless just these are there. Ends the process with a sentence on failure. */
export function ensureDependencies() {
  if (existsSync(INSTALLED) && sameVersions(packagesOf('package-lock.json'), packagesOf(INSTALLED))) return;

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
}

function packagesOf(lockFile) {
  return JSON.parse(readFileSync(lockFile, 'utf8')).packages;
}

/** What is optional (a program for another system, mostly) may be missing, but not be another version. */
function sameVersions(wanted, installed) {
  return Object.entries(wanted).every(([place, { version, optional }]) => {
    if (place === '') return true;
    return place in installed ? installed[place].version === version : optional === true;
  });
}
