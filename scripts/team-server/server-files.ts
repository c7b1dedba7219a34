import path from 'node:path';
import { operatorWords } from '../../src/team/access/account.ts';
import type { Certificate } from './certificate.ts';
import { serverConf } from './server-conf.ts';
import type { TeamFile } from './team-folder.ts';

/** The port for other programs of the same computer, and the one between three servers. */
const LOCAL_PORT = 4222;
const CLUSTER_PORT = 6222;

/** What a browser is given as the team's address, of one server or of three. */
export function addressesOf({ hosts, port }: TeamFile): readonly string[] {
  return hosts.length === 0 ? [`ws://127.0.0.1:${port}`] : hosts.map((host) => `wss://${host}:${port}`);
}

/** The configuration of each server, by the name of its file. */
export async function serverFiles(
  folder: string,
  team: TeamFile,
  tls: Certificate | null,
): Promise<ReadonlyMap<string, string>> {
  const words = await operatorWords(team.keys);
  const hosts = team.hosts.length === 0 ? [null] : team.hosts;
  const files = hosts.map((host, i): [string, string] => [
    `server-${i + 1}.conf`,
    serverConf({
      name: `team-${i + 1}`,
      words,
      folder: path.join(folder, `messages-${i + 1}`),
      websocket: host === null ? `127.0.0.1:${team.port}` : `0.0.0.0:${team.port}`,
      tls,
      port: LOCAL_PORT,
      cluster:
        hosts.length === 1
          ? null
          : {
              listen: `0.0.0.0:${CLUSTER_PORT}`,
              routes: team.hosts.map((other) => `nats://route:${team.clusterPassword}@${other}:${CLUSTER_PORT}`),
              password: team.clusterPassword,
            },
    }),
  ]);
  return new Map(files);
}
