import { existsSync } from 'node:fs';
import type { BrowserName } from '../manifest/manifest.ts';
import { installWithApt } from './install-with-apt.ts';

const CHOICES = {
  chromium: {
    variable: 'CHROMIUM',
    debian: 'chromium',
    places: [
      '/usr/bin/chromium',
      '/usr/bin/chromium-browser',
      '/usr/bin/google-chrome',
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    ],
  },
  firefox: {
    variable: 'FIREFOX',
    debian: 'firefox-esr',
    places: ['/usr/bin/firefox-esr', '/usr/bin/firefox', '/Applications/Firefox.app/Contents/MacOS/firefox'],
  },
} as const satisfies Record<BrowserName, { variable: string; debian: string; places: readonly string[] }>;

/**
 * Where the browser's program is. The environment variable (CHROMIUM or FIREFOX) wins; where none is found, root on
 * Debian installs the distribution's package. Throws a sentence that says what to do otherwise.
 */
export function ensureBrowser(name: BrowserName): string {
  const { variable, debian, places } = CHOICES[name];
  const wished = process.env[variable];
  if (wished) {
    if (existsSync(wished)) return wished;
    throw new Error(`${variable} says ${wished}, but there is no such file.`);
  }
  const find = () => places.find((place) => existsSync(place));
  const found = find() ?? (installWithApt(debian) ? find() : undefined);
  if (found) return found;
  throw new Error(
    `No ${name} was found. Install it (on Debian: apt-get install ${debian}) or say where it is: ${variable}=/path/to/it.`,
  );
}
