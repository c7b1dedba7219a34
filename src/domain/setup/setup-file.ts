import { ok } from '../outcome.ts';
import { bandsWithoutAmount } from './bands-without-amount.ts';
import { repeatedKeys } from './repeated-keys.ts';
import { type Setup, setupFileSchema } from './setup.ts';
import { type SetupFault, setupFaults } from './setup-faults.ts';
import { standsTwice } from './stands-twice.ts';

/** The name a saved setup is given. */
export const SETUP_FILE_NAME = 'headroom-setup.json';

/** Larger files are not setups; reading one would only hold the page up. */
export const LARGEST_SETUP_BYTES = 5_000_000;

/** A setup as the text of a file: JSON that a person can read and change, with the units in the names. */
export function writeSetupFile(setup: Setup): string {
  return `${JSON.stringify({ format: 'headroom-setup', version: 1, ...setup }, null, 2)}\n`;
}

export type SetupReading =
  | { readonly ok: true; readonly value: Setup }
  | { readonly ok: false; readonly faults: readonly SetupFault[] };

/**
 * Reads the text of a setup file. Everything is checked before anything is taken from it; with a single fault nothing
 * is.
 * @returns the setup, or every fault that was found, in the order of the file
 */
export function readSetupFile(text: string): SetupReading {
  let file: unknown;
  try {
    // Windows editors put a byte-order mark in front, which JSON does not allow.
    file = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return whole(notJson(text, error));
  }
  if (holdsTooMuch(file)) {
    return whole('This file holds more than any setup: over 200,000 values. Choose a file saved by Setup.');
  }
  const known = setupFileSchema.safeParse(file);
  if (known.success) {
    const { $schema, format, version, ...setup } = known.data;
    const faults = [...keysTwice(text), ...bandsWithoutAmount(file), ...standsTwice(setup)];
    return faults.length === 0 ? ok(setup) : { ok: false, faults: faults.slice(0, MOST_FAULTS) };
  }
  if (Object(file).format !== 'headroom-setup') {
    return whole('This is not a setup file: it has no line "format": "headroom-setup". Choose a file saved by Setup.');
  }
  if (Object(file).version !== 1) {
    return whole(
      `This setup file says it is version ${JSON.stringify(Object(file).version) ?? 'nothing'}, and this program reads version 1. A newer version of the program wrote it; use that one, or correct the line "version".`,
    );
  }
  return { ok: false, faults: setupFaults(known.error.issues.slice(0, MOST_FAULTS), file) };
}

const keysTwice = (text: string): readonly SetupFault[] =>
  repeatedKeys(text).map(({ key, lines: [first, second] }) => ({
    path: [],
    place: '',
    message: `The field “${key}” stands twice in one group, in line ${first} and in line ${second}, and only one of them would count. Remove one.`,
  }));

/** Nobody mends more at once. */
const MOST_FAULTS = 500;
/** The largest setup that its own limits allow has about half as many. */
const MOST_VALUES = 200_000;

/** A file that is all faults would keep the checker busy for long, and could overflow it. */
function holdsTooMuch(file: unknown): boolean {
  const waiting: unknown[] = [file];
  for (let count = 0; waiting.length > 0; count++) {
    if (count + waiting.length > MOST_VALUES) return true;
    const next = waiting.pop();
    if (typeof next === 'object' && next !== null) for (const value of Object.values(next)) waiting.push(value);
  }
  return false;
}

const whole = (message: string): SetupReading => ({ ok: false, faults: [{ path: [], place: '', message }] });

/** Browsers word the error differently; where one tells the place, the line is worked out from it. */
function notJson(text: string, error: unknown): string {
  if (text.trim() === '') return 'The file is empty. Choose a file saved by Setup.';
  const reason = error instanceof Error ? error.message : '';
  const named = /line (\d+)/.exec(reason)?.[1];
  const position = /position (\d+)/.exec(reason)?.[1];
  const line = named ?? (position === undefined ? undefined : text.slice(0, Number(position)).split('\n').length);
  const where = line === undefined ? '' : ` It stops making sense at line ${line}.`;
  return `The file is not JSON, or was cut off.${where} Look there for a missing comma, quote or brace, or save the setup again.`;
}
