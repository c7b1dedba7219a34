import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import { USAGE } from './help.ts';

/** What was asked for on the command line. */
export interface Command {
  /** A path, or `-` for standard input. */
  readonly lots: string;
  readonly setup: string;
  readonly json: boolean;
}

/**
 * @param environment where npm leaves options that were given to it and not to the command
 * @param usage how the command is called
 */
export function readCommand(
  flags: readonly string[],
  environment: Readonly<Record<string, string | undefined>> = {},
  usage = USAGE,
): Outcome<Command | 'help'> {
  const call = `Usage: ${usage}`;
  const taken = OPTIONS.filter((name) => isTakenByNpm(name, flags, environment));
  if (taken.length > 0) {
    const names = taken.map((name) => `--${name}`).join(' and ');
    return refuse('no-dashes', `npm took ${names} for itself. Put -- before the options. ${call}`);
  }
  if (flags.includes('--help') || flags.includes('-h')) return ok('help');
  const paths: string[] = [];
  let setup: string | undefined;
  let json = false;
  for (let i = 0; i < flags.length; i++) {
    const flag = flags[i] ?? '';
    if (flag === '--json') json = true;
    else if (flag === '--setup') setup = flags[++i];
    else if (flag.startsWith('--setup=')) setup = flag.slice('--setup='.length);
    else if (flag.startsWith('-') && flag !== '-') return refuse('unknown-flag', `There is no option ${flag}. ${call}`);
    else paths.push(flag);
  }
  const [lots, ...more] = paths;
  if (lots === undefined) return refuse('no-lots', `Name the table of lots to read. ${call}`);
  if (more.length > 0) return refuse('too-many', `One table at a time: ${paths.join(', ')} were given. ${call}`);
  if (setup === undefined || setup === '') return refuse('no-setup', `Name the setup to use. ${call}`);
  if (lots === '-' && setup === '-')
    return refuse('stdin-twice', `Only one of the two can come from standard input. ${call}`);
  return ok({ lots, setup, json });
}

const OPTIONS = ['setup', 'json'] as const;

/** Without `--` in front npm reads an option itself: it sets `npm_config_…` and hands over what is left. */
const isTakenByNpm = (
  name: (typeof OPTIONS)[number],
  flags: readonly string[],
  environment: Readonly<Record<string, string | undefined>>,
): boolean =>
  (environment[`npm_config_${name}`] ?? '') !== '' &&
  !flags.some((flag) => flag === `--${name}` || flag.startsWith(`--${name}=`));
