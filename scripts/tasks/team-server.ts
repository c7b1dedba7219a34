import { teamServerCommand } from '../team-server/team-server-command.ts';

/** `npm run team-server -- DIR`: writes a ready configuration of a team's server, and says how to run it. */
export async function run(flags: readonly string[]): Promise<number> {
  const { INIT_CWD, PWD } = process.env;
  const done = await teamServerCommand(flags, INIT_CWD ?? PWD ?? process.cwd());
  if (done.ok) console.log(done.value);
  else console.error(done.message);
  return done.ok ? 0 : 1;
}
