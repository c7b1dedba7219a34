import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import { readCommand, type Command as WorksheetCommand } from '../worksheet/command-line.ts';
import { USAGE } from './help.ts';

/** What was asked for on the command line. */
export interface Command extends WorksheetCommand {
  readonly purse: string;
}

/** Reads the options: those of the worksheet, and the purse. */
export function readPlanCommand(
  flags: readonly string[],
  environment: Readonly<Record<string, string | undefined>> = {},
): Outcome<Command | 'help'> {
  const wasTaken = (environment.npm_config_purse ?? '') !== '' && !flags.some((flag) => flag.startsWith('--purse'));
  if (wasTaken) return refuse('no-dashes', `npm took --purse for itself. Put -- before the options. ${CALL}`);
  const rest: string[] = [];
  let purse: string | undefined;
  for (let i = 0; i < flags.length; i++) {
    const flag = flags[i] ?? '';
    if (flag === '--purse') purse = flags[++i];
    else if (flag.startsWith('--purse=')) purse = flag.slice('--purse='.length);
    else rest.push(flag);
  }
  const command = readCommand(rest, environment, USAGE);
  if (!command.ok) return command;
  if (command.value === 'help') return ok('help');
  if (purse === undefined || purse === '') return refuse('no-purse', `Name the purse to use. ${CALL}`);
  const { lots, setup } = command.value;
  if (purse === '-' && (lots === '-' || setup === '-'))
    return refuse('stdin-twice', `Only one of the three can come from standard input. ${CALL}`);
  return ok({ ...command.value, purse });
}

const CALL = `Usage: ${USAGE}`;
