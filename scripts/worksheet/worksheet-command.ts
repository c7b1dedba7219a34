import type { Outcome } from '../../src/domain/outcome.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import { cautionInFile, setupCautions } from '../../src/domain/setup/setup-cautions.ts';
import { faultSentence } from '../../src/domain/setup/setup-faults.ts';
import { readSetupFile } from '../../src/domain/setup/setup-file.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { decodeText } from '../../src/intake/csv/decode-text.ts';
import { answerTable } from './answer-table.ts';
import { readCommand } from './command-line.ts';
import { HELP } from './help.ts';
import { type LotAnswer, lotAnswer } from './lot-answer.ts';
import { readRows } from './read-rows.ts';

/** What the command needs of the machine it runs on. */
export interface Surroundings {
  /** Bytes of a file, or of standard input for `-`; a refusal where it can't be read. */
  readonly read: (path: string) => Outcome<Uint8Array>;
  readonly out: (text: string) => void;
  readonly warn: (line: string) => void;
  readonly now: Instant;
  /** Environment variables, among which npm leaves the options that it took for its own. */
  readonly environment?: Readonly<Record<string, string | undefined>>;
}

/**
 * The command-line worksheet: a table of lots and a setup in, max bids out.
 * @returns the exit code: 1 when the command, the setup or the table can't be used, else 0
 */
export async function worksheetCommand(flags: readonly string[], around: Surroundings): Promise<number> {
  const command = readCommand(flags, around.environment);
  if (!command.ok) return refused(around, command.message);
  if (command.value === 'help') {
    around.out(HELP);
    return 0;
  }
  const { lots, setup: setupPath, json } = command.value;
  const setup = readSetup(setupPath, around);
  if (setup === undefined) return 1;
  const bytes = around.read(lots);
  if (!bytes.ok) return refused(around, bytes.message);
  const table = await readRows(bytes.value, setup, around.now);
  if (!table.ok) return refused(around, `${lots === '-' ? 'The table' : lots}: ${table.message}`);
  const { rows, unused, dayFirst } = table.value;
  if (unused.length > 0) around.warn(`Columns left out: ${unused.join(', ')}.`);
  if (dayFirst) around.warn('Closes: every date is read with the day first, because some can’t be read otherwise.');
  const context = pricingContext(setup);
  const answers = rows.map((row) => lotAnswer(row, context, around.now));
  for (const answer of answers) tell(answer, around);
  around.out(json ? `${JSON.stringify(answers, null, 2)}\n` : answerTable(answers));
  return 0;
}

/** Reads a setup file, or says what is wrong with it. */
export function readSetup(path: string, around: Surroundings): Setup | undefined {
  const bytes = around.read(path);
  const text = bytes.ok ? decodeText(bytes.value) : bytes;
  if (!text.ok) {
    around.warn(text.message);
    return undefined;
  }
  const setup = readSetupFile(text.value.text);
  if (setup.ok) {
    for (const caution of setupCautions(setup.value)) around.warn(`Setup, ${cautionInFile(caution)}`);
    return setup.value;
  }
  around.warn(`The setup ${path === '-' ? 'on standard input' : path} can’t be used:`);
  for (const fault of setup.faults) around.warn(`- ${faultSentence(fault)}`);
  return undefined;
}

/** What is wrong with a row, once: a problem that is a fault of a cell is not said again. */
function tell({ row, vin, problems, faults, cautions }: LotAnswer, around: Surroundings): void {
  const sentences = new Set([...faults, ...problems.map(({ message }) => message), ...cautions]);
  const which = vin === null ? `Row ${row}` : `Row ${row} (${vin})`;
  for (const sentence of sentences) around.warn(`${which}: ${sentence}`);
}

function refused(around: Surroundings, message: string): number {
  around.warn(message);
  return 1;
}
