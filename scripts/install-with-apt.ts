import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

let listsFetched = false;

/** Installs a package of the distribution, where this is Debian and we are root. Whether it worked. */
export function installWithApt(debianPackage: string): boolean {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/usr/bin/apt-get')) return false;
  console.log(`Installing ${debianPackage} with apt-get …`);
  const apt = (...wish: string[]) =>
    spawnSync('/usr/bin/apt-get', ['-o', 'DPkg::Lock::Timeout=120', ...wish], {
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      stdio: ['ignore', 'ignore', 'inherit'],
    }).status === 0;
  // The package lists of a fresh machine may be missing or old, and an old one would give an old browser. Where they
  // can't be fetched, what it has may still do.
  if (!listsFetched) listsFetched = apt('update', '-qq');
  return apt('install', '-y', '-qq', '--no-install-recommends', debianPackage);
}
