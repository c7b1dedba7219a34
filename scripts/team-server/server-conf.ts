import type { StreamConfig } from '@nats-io/jetstream';
import type { DeviceId } from '../../src/journal/ids.ts';
import { rightsOf } from '../../src/team/message/rights.ts';
import { everySubject, streamOf } from '../../src/team/message/subjects.ts';
import type { TeamId } from '../../src/team/message/team-id.ts';

/** A device that the server lets in, by the public half of its key (`U…`). */
export interface DeviceKey {
  readonly device: DeviceId;
  readonly key: string;
}

/** One server of a team. */
export interface ServerPlan {
  readonly name: string;
  readonly team: TeamId;
  readonly devices: readonly DeviceKey[];
  /** Where it keeps the messages. */
  readonly folder: string;
  /** Host and port for browsers. */
  readonly websocket: string;
  /** Certificate and key; null only for a server that nobody but this computer can reach. */
  readonly tls: { readonly certificate: string; readonly key: string; readonly authority: string | null } | null;
  /** Who may make the stream. */
  readonly keeper: { readonly name: string; readonly password: string };
  /** The port for other programs on this computer. */
  readonly port: number;
  /** The other servers, where there are three. */
  readonly cluster: { readonly listen: string; readonly routes: readonly string[]; readonly password: string } | null;
}

/** The largest message, in bytes: one entry may bring in 125 lots with long notes. */
const MAX_PAYLOAD = 8_000_000;
const quoted = (text: string): string => JSON.stringify(text);
const listed = (texts: readonly string[]): string => `[${texts.map(quoted).join(', ')}]`;

/** The configuration of a server, as `nats-server -c` reads it. */
export function serverConf(plan: ServerPlan): string {
  const { name, port, folder, websocket, tls, cluster, keeper, team, devices } = plan;
  const users = [
    `    { user: ${quoted(keeper.name)}, password: ${quoted(keeper.password)} }`,
    ...devices.map(({ device, key }) => {
      const { publish, subscribe } = rightsOf(team, device);
      return `    # device ${device}\n    { nkey: ${key}, permissions: { publish: ${listed(publish)}, subscribe: ${listed(subscribe)} } }`;
    }),
  ];
  return `${[
    `server_name: ${quoted(name)}`,
    `listen: "127.0.0.1:${port}"`,
    `max_payload: ${MAX_PAYLOAD}`,
    `jetstream { store_dir: ${quoted(folder)} }`,
    tls === null
      ? `websocket { listen: ${quoted(websocket)}, no_tls: true }`
      : `websocket { listen: ${quoted(websocket)}, tls { cert_file: ${quoted(tls.certificate)}, key_file: ${quoted(tls.key)} } }`,
    ...(cluster === null
      ? []
      : [
          `cluster {\n  name: "team"\n  listen: ${quoted(cluster.listen)}\n  routes: ${listed(cluster.routes)}`,
          `  authorization { user: "route", password: ${quoted(cluster.password)} }`,
          ...(tls === null
            ? []
            : [`  tls { cert_file: ${quoted(tls.certificate)}, key_file: ${quoted(tls.key)}${caOf(tls)} }`]),
          '}',
        ]),
    `authorization {\n  users: [\n${users.join('\n')}\n  ]\n}`,
  ].join('\n')}\n`;
}

/** Servers trust each other by the authority of their own certificates. */
const caOf = ({ authority }: { readonly authority: string | null }): string =>
  authority === null ? '' : `, ca_file: ${quoted(authority)}, verify: true`;

/** The stream of a team: nothing in it can be deleted or changed, and a full one refuses instead of forgetting. */
export const streamPlan = (team: TeamId, servers: number): Partial<StreamConfig> & { readonly name: string } => ({
  name: streamOf(team),
  subjects: [everySubject(team)],
  num_replicas: servers,
  deny_delete: true,
  deny_purge: true,
  discard: 'new',
  max_age: 0,
});
