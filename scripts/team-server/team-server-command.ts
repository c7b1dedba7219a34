import path from 'node:path';
import { parseArgs } from 'node:util';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import { writeServerKeys } from '../../src/team/access/server-keys.ts';
import { type Certificate, ownCertificate } from './certificate.ts';
import { addressesOf, serverFiles } from './server-files.ts';
import { newTeam, readTeam, type TeamFile, writeTeam } from './team-folder.ts';

const USAGE = `npm run team-server -- DIR [--host NAME[,NAME,NAME]] [--port 8443] [--certificate FILE --key FILE]`;
const OPTIONS = {
  host: { type: 'string' },
  port: { type: 'string' },
  certificate: { type: 'string' },
  key: { type: 'string' },
} as const;

type Flags = ReturnType<typeof parseArgs<{ options: typeof OPTIONS; allowPositionals: true }>>['values'];

/** Writes a team's server, ready to run, and says how; the text to print, or what to do instead. */
export async function teamServerCommand(args: readonly string[], from: string): Promise<Outcome<string>> {
  const read = flagsOf(args);
  if (!read.ok) return read;
  const { dir, flags } = read.value;
  const folder = path.resolve(from, dir);
  const before = readTeam(folder);
  if (!before.ok) return before;
  const team = changed(before.value ?? newTeam(), flags, from);
  if (!team.ok) return team;
  const tls = certificateFor(folder, team.value, before.value);
  if (!tls.ok) return tls;
  const files = await serverFiles(folder, team.value, tls.value);
  writeTeam(folder, team.value, files);
  return ok(howToRun(folder, team.value, tls.value, [...files.keys()]));
}

function flagsOf(args: readonly string[]): Outcome<{ dir: string; flags: Flags }> {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
    const [dir, ...more] = positionals;
    return dir === undefined || more.length > 0 ? refuse('usage', USAGE) : ok({ dir, flags: values });
  } catch (error) {
    return refuse('usage', `${error instanceof Error ? error.message : String(error)}\n${USAGE}`);
  }
}

function changed(team: TeamFile, flags: Flags, from: string): Outcome<TeamFile> {
  const hosts = flags.host?.split(',').map((host) => host.trim()) ?? team.hosts;
  const port = flags.port === undefined ? team.port : Number(flags.port);
  if (hosts.length > 0 && !hosts.every((host) => /^[A-Za-z0-9.-]+$/.test(host)))
    return refuse(
      'bad-host',
      'Give the host as browsers reach it, such as --host team.example, without wss:// and port.',
    );
  if (![0, 1, 3].includes(hosts.length))
    return refuse(
      'bad-host',
      'Name one host, or three that stand in for each other: with two, neither can go on alone.',
    );
  if (!Number.isInteger(port) || port < 1 || port > 65_535) return refuse('bad-port', 'Give a port from 1 to 65535.');
  const certificate = givenCertificate(flags, from);
  if (!certificate.ok) return certificate;
  return ok({ ...team, ...certificate.value, hosts, port });
}

function givenCertificate({ certificate, key }: Flags, from: string): Outcome<Partial<Pick<TeamFile, 'certificate'>>> {
  if (certificate === undefined && key === undefined) return ok({});
  if (certificate === undefined || key === undefined)
    return refuse('usage', 'Give both --certificate FILE and --key FILE.');
  return ok({ certificate: { certificate: path.resolve(from, certificate), key: path.resolve(from, key) } });
}

/** Without a host the server answers this computer alone, and needs none. */
function certificateFor(folder: string, team: TeamFile, before: TeamFile | null): Outcome<Certificate | null> {
  const { hosts, certificate } = team;
  if (hosts.length === 0) return ok(null);
  if (certificate !== undefined) return ok({ ...certificate, authority: null });
  return ownCertificate(folder, hosts, before !== null && before.hosts.join() !== hosts.join());
}

function howToRun(folder: string, team: TeamFile, tls: Certificate | null, files: readonly string[]): string {
  const where =
    team.hosts.length > 1 ? 'On each of the three computers, with this folder copied to the same place:' : 'Run it:';
  return [
    `The server of team ${team.team} is written to ${folder}.`,
    '',
    `1. Install nats-server (on Debian: apt-get install nats-server). ${where}`,
    ...files.map((file) => `     nats-server -c ${path.join(folder, file)}`),
    ...(tls?.authority
      ? [`2. Browsers must trust ${tls.authority}: bring it in under their certificate authorities, on each computer.`]
      : []),
    `${tls?.authority ? 3 : 2}. On the owner’s computer, start the team in Headroom with this text. Whoever has it can let in and put out:`,
    '',
    writeServerKeys({ team: team.team, addresses: [...addressesOf(team)], ...team.keys }),
    '',
    'Nothing here has to be touched for who joins or leaves. Keep this folder to yourself: keys are in it. Back it up like any other data.',
    '',
  ].join('\n');
}
