import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { installWithApt } from './install-with-apt.ts';

const FOLDERS = ['/usr/bin', '/usr/local/bin', '/opt/homebrew/bin'];

/** Poppler, which reads what a browser prints, installed when it is missing. Throws a sentence that says what to do. */
function ensurePdfReader(): string {
  const find = () => FOLDERS.map((folder) => path.join(folder, 'pdftotext')).find((place) => existsSync(place));
  const found = find() ?? (installWithApt('poppler-utils') ? find() : undefined);
  if (found !== undefined) return found;
  throw new Error(
    'No pdftotext was found. Install it (on Debian: apt-get install poppler-utils), then run this again.',
  );
}

/** The text of each page of a PDF file, line by line as it stands on the paper; empty lines are left out. */
export function pagesOfPdf(file: string): readonly (readonly string[])[] {
  const text = execFileSync(ensurePdfReader(), ['-layout', file, '-'], { encoding: 'utf8' });
  // A page ends with a form feed.
  return text
    .split('\f')
    .slice(0, -1)
    .map((page) => page.split('\n').flatMap((line) => line.trim() || []));
}
