import type { OperatorWords } from '../../src/team/access/account.ts';

/** One server of a team. */
export interface ServerPlan {
  readonly name: string;
  /** Whose word it takes for who is who. */
  readonly words: OperatorWords;
  /** Where it keeps the messages. */
  readonly folder: string;
  /** Host and port for browsers. */
  readonly websocket: string;
  /** Certificate and key; null only for a server that nobody but this computer can reach. */
  readonly tls: { readonly certificate: string; readonly key: string; readonly authority: string | null } | null;
  /** The port for other programs on this computer. */
  readonly port: number;
  /** The other servers, where there are three. */
  readonly cluster: { readonly listen: string; readonly routes: readonly string[]; readonly password: string } | null;
}

/** Bytes of a message: the batches are far smaller, and one entry can't be cut. */
const MAX_PAYLOAD = 8_000_000;
const quoted = (text: string): string => JSON.stringify(text);
const listed = (texts: readonly string[]): string => `[${texts.map(quoted).join(', ')}]`;

/**
 * The configuration of a server, as `nats-server -c` reads it. It never has to be changed for who joins or leaves: that is in
 * the operator's word for the account, which an owner's computer renews.
 */
export function serverConf(plan: ServerPlan): string {
  const { name, port, folder, websocket, tls, cluster, words } = plan;
  const { operator, system, account } = words;
  return `${[
    `server_name: ${quoted(name)}`,
    `listen: "127.0.0.1:${port}"`,
    `max_payload: ${MAX_PAYLOAD}`,
    `jetstream { store_dir: ${quoted(`${folder}/stream`)} }`,
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
    `operator: ${operator}`,
    `system_account: ${system.key}`,
    `resolver { type: full, dir: ${quoted(`${folder}/accounts`)}, allow_delete: false, interval: "2m" }`,
    // The account's is only for the first start: a later word that the server was told stays.
    `resolver_preload {\n  ${system.key}: ${system.word}\n  ${account.key}: ${account.word}\n}`,
  ].join('\n')}\n`;
}

/** Servers trust each other by the authority of their own certificates. */
const caOf = ({ authority }: { readonly authority: string | null }): string =>
  authority === null ? '' : `, ca_file: ${quoted(authority)}, verify: true`;
