import { existsSync } from 'node:fs';
import { installWithApt } from './install-with-apt.ts';

/** Programs that read plain-text double-entry journals: the outside judges of what the books write. */
const TOOLS = {
  ledger: { package: 'ledger', places: ['/usr/bin/ledger', '/usr/local/bin/ledger', '/opt/homebrew/bin/ledger'] },
  hledger: { package: 'hledger', places: ['/usr/bin/hledger', '/usr/local/bin/hledger', '/opt/homebrew/bin/hledger'] },
  'bean-check': {
    package: 'beancount',
    places: ['/usr/bin/bean-check', '/usr/local/bin/bean-check', '/opt/homebrew/bin/bean-check'],
  },
} as const;
export type JournalTool = keyof typeof TOOLS;

/** Where the program is; installed when it is missing, as the browsers are. Throws a sentence that says what to do otherwise. */
export function ensureJournalTool(name: JournalTool): string {
  const tool = TOOLS[name];
  const find = () => tool.places.find((place) => existsSync(place));
  const found = find() ?? (installWithApt(tool.package) ? find() : undefined);
  if (found !== undefined) return found;
  throw new Error(
    `No ${name} was found. Install it (on Debian: apt-get install ${tool.package}), then run this again.`,
  );
}
