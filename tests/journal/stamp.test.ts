import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureOpenssl } from '../../scripts/ensure-openssl.ts';
import { toBase64 } from '../../src/journal/base64.ts';
import { type ChainHead, chainHeadSchema, writeHead } from '../../src/journal/chain-head.ts';
import { checkStamp } from '../../src/journal/stamp/check-stamp.ts';
import { tokenOfAnswer } from '../../src/journal/stamp/read-answer.ts';
import { stampRequest } from '../../src/journal/stamp/stamp-request.ts';
import { value } from '../store/open-test-store.ts';
import { Authority } from './stamp-authority.ts';

// OpenSSL is the judge here, on both sides: it reads our request, answers it, and checks its own answer against our text.
const folder = mkdtempSync(join(tmpdir(), 'stamp-'));
afterAll(() => rmSync(folder, { recursive: true }));
const head: ChainHead = chainHeadSchema.parse({ device: 'QG4B4WNYRZ', sequence: 30, hash: 'ab'.repeat(32) });
let rsa: Authority;
let ecdsa: Authority;
beforeAll(() => {
  rsa = new Authority(folder, { name: 'Invented Time Office', key: 'rsa' });
  ecdsa = new Authority(folder, { name: 'Curve Time Office', key: 'ec' });
});

const stampOf = (token: Uint8Array, of: ChainHead = head) => ({ ...of, token: toBase64(token) });
const tokenOf = (answer: Uint8Array<ArrayBuffer>) => value(tokenOfAnswer(answer));

test('a request is what OpenSSL reads as one over SHA-256 of the noted line, asking for the certificate', async () => {
  const file = join(folder, 'request.tsq');
  writeFileSync(file, await stampRequest(head));
  const told = execFileSync(ensureOpenssl(), ['ts', '-query', '-in', file, '-text'], { encoding: 'utf8' });
  expect(told).toContain('Hash Algorithm: sha256');
  expect(told).toContain('Certificate required: yes');
  expect(told).toContain('Nonce: unspecified');
  writeFileSync(join(folder, 'line.txt'), writeHead(head));
  const theirs = join(folder, 'theirs.tsq');
  const line = join(folder, 'line.txt');
  execFileSync(ensureOpenssl(), ['ts', '-query', '-data', line, '-sha256', '-cert', '-no_nonce', '-out', theirs], {
    stdio: 'pipe',
  });
  expect(readFileSync(file).equals(readFileSync(theirs))).toBe(true);
});

test('an answer of an authority is read, its time and its name told, whichever kind of key it signs with', async () => {
  for (const authority of [rsa, ecdsa]) {
    const answer = authority.answer(await stampRequest(head));
    const found = await checkStamp(stampOf(tokenOf(answer)));
    expect(found).toEqual({
      as: 'good',
      at: expect.any(Number),
      authority: `${authority.name}, Invented`,
      issuer: `${authority.name} Root, Invented`,
    });
    expect(found.as === 'good' && Math.abs(found.at - Date.now())).toBeLessThan(120_000);
    authority.verify(answer, writeHead(head));
  }
});

test('a stamp of another head does not hold, and with a bit turned it does not hold or says the very same', async () => {
  const token = tokenOf(rsa.answer(await stampRequest(head)));
  expect(await checkStamp(stampOf(token, { ...head, sequence: 31 }))).toMatchObject({ as: 'bad' });
  const honest = await checkStamp(stampOf(token));
  let held = 0;
  for (let at = 0; at < token.length; at += 11) {
    const turned = token.slice();
    turned[at] = (turned[at] ?? 0) ^ (1 << (at % 8));
    const found = await checkStamp(stampOf(turned));
    if (found.as !== 'good') continue;
    // Some bits are signed by nobody: of the maker's certificate, or of how a value is tagged. Then nothing else is claimed.
    expect(found, `byte ${at}`).toEqual(honest);
    if (!rsa.inCertificates(token, at)) held += 1;
  }
  expect(held).toBeLessThan(6);
  expect(await checkStamp(stampOf(token.slice(0, -30)))).toMatchObject({ as: 'bad' });
  expect(await checkStamp(stampOf(Uint8Array.from([...token, 0, 0])))).toMatchObject({ as: 'bad' });
});

test('a stamp over a weaker hash, a refusal, and one by a certificate for something else are told apart', async () => {
  const weak = tokenOf(rsa.answer(rsa.weakRequest(writeHead(head))));
  expect(await checkStamp(stampOf(weak))).toMatchObject({ as: 'bad', message: expect.stringContaining('SHA-256') });
  expect(tokenOfAnswer(rsa.refusal(writeHead(head)))).toMatchObject({ ok: false, reason: 'refused-there' });
  expect(tokenOfAnswer(new TextEncoder().encode('<html>'))).toMatchObject({ ok: false, reason: 'not-an-answer' });
  const token = tokenOf(rsa.answer(await stampRequest(head)));
  const other = rsa.signedForMail(token);
  expect(await checkStamp(stampOf(other))).toMatchObject({
    as: 'bad',
    message: expect.stringContaining('not for time stamps'),
  });
});
