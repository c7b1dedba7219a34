import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureOpenssl } from '../../scripts/ensure-openssl.ts';

/** A time-stamp authority made with OpenSSL, with a certificate of its own and one that is for mail. */
export class Authority {
  readonly name: string;
  private readonly folder: string;

  constructor(parent: string, { name, key }: { readonly name: string; readonly key: 'rsa' | 'ec' }) {
    this.name = name;
    this.folder = mkdtempSync(join(parent, key));
    writeFileSync(this.file('ts.cnf'), CONFIG);
    writeFileSync(this.file('serial'), '01\n');
    const made = key === 'rsa' ? ['rsa:2048'] : ['ec', '-pkeyopt', 'ec_paramgen_curve:P-256'];
    this.openssl(
      'req',
      '-x509',
      '-newkey',
      ...made,
      '-nodes',
      '-subj',
      `/O=Invented/CN=${name} Root`,
      '-days',
      '30',
      '-keyout',
      'ca.key',
      '-out',
      'ca.pem',
    );
    for (const [file, extensions] of [
      ['tsa', 'for_stamps'],
      ['mail', 'for_mail'],
    ] as const) {
      this.openssl(
        'req',
        '-newkey',
        ...made,
        '-nodes',
        '-subj',
        `/O=Invented/CN=${name}`,
        '-keyout',
        `${file}.key`,
        '-out',
        `${file}.csr`,
      );
      this.openssl(
        'x509',
        '-req',
        '-in',
        `${file}.csr`,
        '-CA',
        'ca.pem',
        '-CAkey',
        'ca.key',
        '-CAcreateserial',
        '-days',
        '20',
        '-extfile',
        'ts.cnf',
        '-extensions',
        extensions,
        '-out',
        `${file}.pem`,
      );
    }
  }

  /** The answer to a request, as a file that comes back. */
  answer(request: Uint8Array): Uint8Array<ArrayBuffer> {
    writeFileSync(this.file('request.tsq'), request);
    this.openssl(
      'ts',
      '-reply',
      '-config',
      'ts.cnf',
      '-queryfile',
      'request.tsq',
      '-signer',
      'tsa.pem',
      '-inkey',
      'tsa.key',
      '-chain',
      'ca.pem',
      '-out',
      'answer.tsr',
    );
    return this.read('answer.tsr');
  }

  /** Throws unless OpenSSL takes the answer for a stamp of the text by this authority. */
  verify(answer: Uint8Array, text: string): void {
    writeFileSync(this.file('answer.tsr'), answer);
    writeFileSync(this.file('text.txt'), text);
    this.openssl(
      'ts',
      '-verify',
      '-data',
      'text.txt',
      '-in',
      'answer.tsr',
      '-CAfile',
      'ca.pem',
      '-untrusted',
      'tsa.pem',
    );
  }

  /** A request over SHA-1. */
  weakRequest(text: string): Uint8Array {
    return this.query(text, '-sha1');
  }

  /** The answer to a request over a hash that the authority does not take. */
  refusal(text: string): Uint8Array<ArrayBuffer> {
    return this.answer(this.query(text, '-md5'));
  }

  /** The same content signed with the certificate that is for mail. */
  signedForMail(token: Uint8Array): Uint8Array<ArrayBuffer> {
    writeFileSync(this.file('token.der'), token);
    this.openssl('cms', '-verify', '-inform', 'DER', '-in', 'token.der', '-noverify', '-binary', '-out', 'content.der');
    this.openssl(
      'cms',
      '-sign',
      '-binary',
      '-nodetach',
      '-outform',
      'DER',
      '-cades',
      '-econtent_type',
      '1.2.840.113549.1.9.16.1.4',
      '-md',
      'sha256',
      '-in',
      'content.der',
      '-signer',
      'mail.pem',
      '-inkey',
      'mail.key',
      '-out',
      'mail.der',
    );
    return this.read('mail.der');
  }

  /** Whether a byte of a token lies in a certificate that came with it. */
  inCertificates(token: Uint8Array, at: number): boolean {
    const bytes = Buffer.from(token);
    return ['tsa.pem', 'ca.pem'].some((file) => {
      const der = Buffer.from(readFileSync(this.file(file), 'utf8').replace(/-----[^-]+-----|\s/g, ''), 'base64');
      const from = bytes.indexOf(der);
      return from >= 0 && at >= from && at < from + der.length;
    });
  }

  private query(text: string, digest: string): Uint8Array {
    writeFileSync(this.file('text.txt'), text);
    this.openssl('ts', '-query', '-data', 'text.txt', digest, '-cert', '-out', 'query.tsq');
    return this.read('query.tsq');
  }

  private read(name: string): Uint8Array<ArrayBuffer> {
    return new Uint8Array(readFileSync(this.file(name)));
  }

  private file(name: string): string {
    return join(this.folder, name);
  }

  private openssl(...args: readonly string[]): void {
    execFileSync(ensureOpenssl(), args, { cwd: this.folder, stdio: 'pipe' });
  }
}

const CONFIG = `
[tsa]
default_tsa = invented
[invented]
serial = serial
default_policy = 1.2.3.4.1
signer_digest = sha256
digests = sha1, sha256
accuracy = secs:1
ordering = no
tsa_name = no
ess_cert_id_chain = no
ess_cert_id_alg = sha256
[for_stamps]
basicConstraints = CA:FALSE
keyUsage = critical, digitalSignature
extendedKeyUsage = critical, timeStamping
[for_mail]
basicConstraints = CA:FALSE
keyUsage = critical, digitalSignature
extendedKeyUsage = emailProtection
`;
