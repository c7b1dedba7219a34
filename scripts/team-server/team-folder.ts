import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import * as z from 'zod/mini';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import { firstIssue } from '../../src/journal/read-entry.ts';
import { newServerSeeds, serverKeysSchema } from '../../src/team/access/server-keys.ts';
import { teamIdSchema } from '../../src/team/message/team-id.ts';

/** What is remembered between two calls: where the server stands, and the keys and the password that never change. */
const teamFileSchema = z.strictObject({
  team: teamIdSchema,
  /** One server or three, by the names or numbers under which browsers reach them; none for this computer alone. */
  hosts: z.array(z.string().check(z.minLength(1))),
  port: z.int().check(z.gte(1), z.lte(65_535)),
  /** Files of a certificate that came from elsewhere; without them one is made here. */
  certificate: z.optional(z.strictObject({ certificate: z.string(), key: z.string() })),
  clusterPassword: z.string(),
  keys: z.pick(serverKeysSchema, { operator: true, account: true, system: true }),
});
export type TeamFile = z.infer<typeof teamFileSchema>;

const fileIn = (folder: string): string => path.join(folder, 'team.json');
/** The alphabet of ids. */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** A team that nobody is in yet. */
export function newTeam(): TeamFile {
  const id = Array.from(randomBytes(16), (byte) => LETTERS.charAt(byte % 32)).join('');
  return {
    team: teamIdSchema.parse(id),
    hosts: [],
    port: 8443,
    clusterPassword: randomBytes(24).toString('base64url'),
    keys: newServerSeeds(),
  };
}

/** The team of a folder, or null when there is none in it. A file that can't be read is never written over. */
export function readTeam(folder: string): Outcome<TeamFile | null> {
  if (!existsSync(fileIn(folder))) return ok(null);
  try {
    const file = teamFileSchema.safeParse(JSON.parse(readFileSync(fileIn(folder), 'utf8')));
    return file.success ? ok(file.data) : damaged(folder, firstIssue(file.error));
  } catch (error) {
    return damaged(folder, error instanceof Error ? error.message : String(error));
  }
}

function damaged(folder: string, what: string): Outcome<never> {
  return refuse(
    'damaged',
    `${fileIn(folder)} can’t be read (${what}). Nothing was written. Put back a copy of it, or name another folder.`,
  );
}

/** Writes the team and its servers' files, for nobody else to read: keys stand in them. */
export function writeTeam(folder: string, team: TeamFile, files: ReadonlyMap<string, string>): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const all = new Map([...files, ['team.json', `${JSON.stringify(team, null, 2)}\n`]]);
  for (const [name, text] of all) writeFileSync(path.join(folder, name), text, { mode: 0o600 });
}
