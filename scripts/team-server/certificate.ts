import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import path from 'node:path';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';

/** Files of a server's own certificate, and of who vouches for it. */
export interface Certificate {
  readonly certificate: string;
  readonly key: string;
  /** What browsers have to be told to trust; null when the certificate came from elsewhere. */
  readonly authority: string | null;
}

/** What browsers take at most of an authority of one's own, in days (common practice, no source). */
const DAYS = 825;

/**
 * A certificate for these hosts, made here when there is none yet. Its authority can vouch for nothing else afterwards.
 * @param anew whether to make another although there is one, because it is for other hosts
 */
export function ownCertificate(folder: string, hosts: readonly string[], anew: boolean): Outcome<Certificate> {
  const tls = path.join(folder, 'tls');
  const file = (name: string) => path.join(tls, name);
  const made = { certificate: file('server.pem'), key: file('server.key'), authority: file('authority.pem') };
  if (!anew && Object.values(made).every((one) => existsSync(one))) return ok(made);
  mkdirSync(tls, { recursive: true, mode: 0o700 });
  const names = hosts.map((host) => `${isIP(host) === 0 ? 'DNS' : 'IP'}:${host}`).join(',');
  writeFileSync(file('server.ext'), `subjectAltName=${names}\nextendedKeyUsage=serverAuth,clientAuth\n`);
  const key = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes'];
  const steps = [
    [
      'req',
      '-x509',
      ...key,
      '-days',
      `${DAYS}`,
      '-subj',
      '/CN=Headroom team',
      '-keyout',
      file('authority.key'),
      '-out',
      made.authority,
    ],
    ['req', ...key, '-subj', `/CN=${hosts[0]}`, '-keyout', made.key, '-out', file('server.csr')],
    [
      ...[
        'x509',
        '-req',
        '-in',
        file('server.csr'),
        '-CA',
        made.authority,
        '-CAkey',
        file('authority.key'),
        '-CAcreateserial',
      ],
      ...['-days', `${DAYS}`, '-extfile', file('server.ext'), '-out', made.certificate],
    ],
  ];
  for (const step of steps) {
    const { status, stderr, error } = spawnSync('openssl', step, { encoding: 'utf8' });
    if (status !== 0)
      return refuse(
        'no-certificate',
        `No certificate could be made (${error?.message ?? stderr.trim().split('\n').at(-1)}). Install openssl, or give one with --certificate FILE --key FILE.`,
      );
  }
  // Nobody can make another certificate that the browsers of the team would trust.
  for (const name of ['authority.key', 'server.csr', 'server.ext', 'authority.srl'])
    rmSync(file(name), { force: true });
  return ok(made);
}
