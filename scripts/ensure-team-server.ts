import { existsSync } from 'node:fs';
import { installWithApt } from './install-with-apt.ts';

const PLACES = [
  '/usr/sbin/nats-server',
  '/usr/bin/nats-server',
  '/usr/local/bin/nats-server',
  '/opt/homebrew/bin/nats-server',
];

/** The server that a team's messages are kept by, or undefined where it is not installed. */
export const findTeamServer = (): string | undefined => PLACES.find((place) => existsSync(place));

/** The same; installed when it is missing, as the browsers are. Throws a sentence that says what to do otherwise. */
export function ensureTeamServer(): string {
  const found = findTeamServer() ?? (installWithApt('nats-server') ? findTeamServer() : undefined);
  if (found !== undefined) return found;
  throw new Error(
    'No nats-server was found. Install it (on Debian: apt-get install nats-server), then run this again.',
  );
}
