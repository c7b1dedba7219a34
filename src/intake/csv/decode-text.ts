import { type Outcome, ok, refuse } from '../../domain/outcome.ts';

export interface DecodedText {
  readonly text: string;
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
}

/** Larger files are refused before they are read: the page would run out of memory half way. */
export const LARGEST_FILE_BYTES = 200_000_000;

/** What other files begin with, and what to do with them instead. */
const OTHER_FILES: readonly (readonly [string, string])[] = [
  ['PK\u0003\u0004', 'a spreadsheet workbook or a zip. Open it, and save the sheet as CSV'],
  ['\u00d0\u00cf\u0011\u00e0', 'an old spreadsheet workbook. Open it, and save the sheet as CSV'],
  ['%PDF', 'a PDF. Copy its table and paste it here instead'],
  ['\u0089PNG', 'a picture. Type or paste the lots instead'],
  ['\u00ff\u00d8\u00ff', 'a picture. Type or paste the lots instead'],
  ['\u001f\u008b', 'compressed. Unpack it first'],
];

/**
 * Turns the bytes of a text file into text. Its byte-order mark decides; without one UTF-8 is tried, then UTF-16 by its
 * pattern of zeros, and what is none of these is read as Windows-1252, which contains Latin-1 and never fails.
 */
export function decodeText(bytes: Uint8Array): Outcome<DecodedText> {
  if (bytes.length > LARGEST_FILE_BYTES) {
    return refuse('too-large', 'The file is larger than 200 MB. Split it, or leave out columns that are not needed.');
  }
  const start = String.fromCharCode(...bytes.subarray(0, 8));
  const other = OTHER_FILES.find(([signature]) => start.startsWith(signature));
  if (other !== undefined) return refuse('not-text', `This file is ${other[1]}.`);
  const encoding = encodingOf(bytes);
  if (isBinary(bytes, encoding))
    return refuse('not-text', 'This file is not text. Save the table as CSV and choose that file.');
  // The decoder takes the byte-order mark off.
  const text = new TextDecoder(encoding).decode(bytes);
  return ok({ text, encoding });
}

/** Programs, pictures and databases are full of control characters; a table has line ends and tabs, and null bytes if damaged. */
function isBinary(bytes: Uint8Array, encoding: DecodedText['encoding']): boolean {
  if (encoding !== 'utf-8' && encoding !== 'windows-1252') return false;
  const sample = bytes.subarray(0, 65_536);
  const odd = sample.reduce((sum, byte) => sum + (byte > 0 && byte < 32 && (byte < 9 || byte > 13) ? 1 : 0), 0);
  return odd > 64 && odd > sample.length / 50;
}

function encodingOf(bytes: Uint8Array): DecodedText['encoding'] {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return utf16WithoutMark(bytes) ?? (isUtf8(bytes) ? 'utf-8' : 'windows-1252');
}

/** Latin letters in UTF-16 have a zero in every other byte; a few stray zeros in a damaged file do not look like that. */
function utf16WithoutMark(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const sample = bytes.subarray(0, 4096);
  const pairs = Math.floor(sample.length / 2);
  let [evenZeros, oddZeros] = [0, 0];
  for (let i = 0; i < pairs; i++) {
    if (sample[2 * i] === 0) evenZeros++;
    if (sample[2 * i + 1] === 0) oddZeros++;
  }
  if (pairs > 1 && oddZeros > pairs * 0.7 && evenZeros < pairs * 0.1) return 'utf-16le';
  if (pairs > 1 && evenZeros > pairs * 0.7 && oddZeros < pairs * 0.1) return 'utf-16be';
  return undefined;
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    // TypeError is how the decoder says "not UTF-8".
    return false;
  }
}
