import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import { USAGE } from './help.ts';

/** What was asked for on the command line. */
export interface Command {
  /** A path, or `-` for standard input. */
  readonly lots: string;
  readonly setup: string;
  readonly json: boolean;
}

export function readCommand(flags: readonly string[]): Outcome<Command | 'help'> {
  if (flags.includes('--help') || flags.includes('-h')) return ok('help');
  const paths: string[] = [];
  let setup: string | undefined;
  let json = false;
  for (let i = 0; i < flags.length; i++) {
    const flag = flags[i] ?? '';
    if (flag === '--json') json = true;
    else if (flag === '--setup') setup = flags[++i];
    else if (flag.startsWith('--setup=')) setup = flag.slice('--setup='.length);
    else if (flag.startsWith('-') && flag !== '-') return refuse('unknown-flag', `There is no option ${flag}. ${CALL}`);
    else paths.push(flag);
  }
  const [lots, ...more] = paths;
  if (lots === undefined) return refuse('no-lots', `Name the table of lots to read. ${CALL}`);
  if (more.length > 0) return refuse('too-many', `One table at a time: ${paths.join(', ')} were given. ${CALL}`);
  if (setup === undefined || setup === '') return refuse('no-setup', `Name the setup to use. ${CALL}`);
  if (lots === '-' && setup === '-')
    return refuse('stdin-twice', `Only one of the two can come from standard input. ${CALL}`);
  return ok({ lots, setup, json });
}

const CALL = `Usage: ${USAGE}`;
