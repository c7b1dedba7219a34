import { machine } from './worksheet/around.ts';
import { worksheetCommand } from './worksheet/worksheet-command.ts';

/** `npm run worksheet -- LOTS.csv --setup SETUP.json [--json]`: max bids of a table of lots, without a browser. */
export function run(flags: readonly string[]): Promise<number> {
  return worksheetCommand(flags, machine());
}
