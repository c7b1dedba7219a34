import { existsSync } from 'node:fs';
import { installWithApt } from './install-with-apt.ts';

const PLACES = ['/usr/bin/openssl', '/usr/local/bin/openssl', '/opt/homebrew/bin/openssl'];

/** Where OpenSSL is, the judge of time stamps in the tests; installed when it is missing. Throws a sentence that says what to do. */
export function ensureOpenssl(): string {
  const find = () => PLACES.find((place) => existsSync(place));
  const found = find() ?? (installWithApt('openssl') ? find() : undefined);
  if (found !== undefined) return found;
  throw new Error('No openssl was found. Install it (on Debian: apt-get install openssl), then run this again.');
}
