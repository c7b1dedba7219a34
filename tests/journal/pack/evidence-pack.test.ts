import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { JSDOM } from 'jsdom';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { chainHeadSchema } from '../../../src/journal/chain-head.ts';
import { openPack } from '../../../src/journal/pack/open-pack.ts';
import { verifyPack } from '../../../src/journal/pack/verify-pack.ts';
import { packMoments } from '../../../src/views/history/pack-moments.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, value } from '../../store/open-test-store.ts';
import { type Break, everyBreak } from './broken-packs.ts';
import { linesIn, NASTY, PICTURES, rehashed, resealed, samplePack } from './sample-pack.ts';

const folder = mkdtempSync(join(tmpdir(), 'pack-'));
afterAll(() => rmSync(folder, { recursive: true }));

let pack = '';
let breaks: Break[] = [];
beforeAll(async () => {
  freshBrowser();
  pack = await samplePack();
  breaks = everyBreak(pack);
});

function script(html: string, ...options: string[]): { status: number | null; said: string } {
  const file = join(folder, 'pack.html');
  writeFileSync(file, html);
  const { status, stdout, stderr } = spawnSync(process.execPath, ['scripts/verify-pack.mjs', file, ...options], {
    encoding: 'utf8',
  });
  return { status, said: stdout + stderr };
}
const findings = async (html: string): Promise<readonly string[]> => {
  const checked = await verifyPack(html);
  return checked.ok ? checked.value.findings : [checked.message];
};

test('a pack as it was made is taken, by the tool and by the script', async () => {
  const { findings: found, counts, files } = value(await verifyPack(pack));
  expect(found).toEqual([]);
  expect(counts).toEqual({ shown: 7, heldOfLot: 1, held: 2, bare: 0 });
  expect(files.size).toBe(2);
  const { status, said } = script(pack);
  expect(said).toContain('7 entries about this lot shown, 1 held back');
  expect(said).toContain('"hammerCents":985000');
  expect(status).toBe(0);
});

test('broken in each of many ways and sealed anew, it is found broken by the tool and by the script', async () => {
  expect(breaks.length).toBeGreaterThanOrEqual(10);
  for (const { how, broken, said } of breaks) {
    expect(broken, how).not.toBe(pack);
    expect((await findings(broken)).join('\n'), how).toMatch(said);
    const check = script(broken);
    expect(check.said, how).toMatch(said);
    expect(check.status, how).toBe(1);
  }
});

test('a journal written anew as a whole shows only against a fingerprint that was noted before', async () => {
  const lines = linesIn(pack);
  const { device, sequence, hash } = at(at(lines, 0).heads ?? [], 0);
  const head = chainHeadSchema.parse({ device, sequence, hash });
  const first = at(lines, 2).held ?? at(lines, 2).entry;
  if (first === undefined) throw new Error('the second entry is about the lot');
  const { content: _, hash: __, happening: ___, ...fields } = first as Record<string, unknown>;
  const anew = rehashed({ ...fields, salt: 'ab'.repeat(16), happening: { kind: 'lot-dropped' } } as never);
  const heads = [{ device: anew.device, sequence: anew.sequence, hash: anew.hash }];
  const page = pack.slice(0, pack.indexOf('<h2>What happened'));
  const forged = resealed(pack, [{ ...lines[0], heads }, { entry: anew }], page);
  expect(await findings(forged)).toEqual([]);
  expect(script(forged).status).toBe(0);
  const noted = { ...head, sequence: anew.sequence };
  expect(value(await verifyPack(forged, { heads: [noted], keys: [] })).findings).toEqual([
    expect.stringContaining('rewritten'),
  ]);
  expect(value(await verifyPack(forged, { heads: [head], keys: [] })).findings).toEqual([
    expect.stringContaining('cut short'),
  ]);
  expect(script(forged, '--noted', `${noted.device}:${noted.sequence}:${noted.hash}`)).toMatchObject({
    status: 1,
    said: expect.stringContaining('rewritten'),
  });
  expect(script(pack, '--noted', `${head.device}:${head.sequence}:${head.hash}`).status).toBe(0);
});

test('the words of the page can be changed and sealed anew, but not what its entries say, which the check tells', async () => {
  const { page } = value(openPack(pack));
  const forged = resealed(pack, linesIn(pack), page.replace('Made by the buyer', 'Lost at $1'));
  expect(forged).toContain('Lost at $1');
  const { findings: found, lines, head } = value(await verifyPack(forged));
  expect(found).toEqual([]);
  const told = packMoments(lines, { lot: head.lot, say: String }).map(({ what }) => what);
  expect(told).toContainEqual(expect.stringContaining('$9,850'));
  expect(told.join()).not.toContain('Lost at $1');
  expect(script(forged).said).toContain('"hammerCents":985000');
});

test('what other lots are about, and what was held back, is nowhere in it', () => {
  expect(pack).not.toContain('SECRET');
  expect(pack).not.toContain('1990000');
  expect(pack).not.toContain('Birch');
});

test('text is data: nothing that was typed or captured becomes markup, and nothing in it runs', () => {
  const { window } = new JSDOM(pack, { runScripts: 'dangerously' });
  const { document } = window;
  expect(document.querySelectorAll('script')).toHaveLength(0);
  expect(document.querySelectorAll('#headroom-evidence')).toHaveLength(1);
  expect(document.querySelector('h1')?.textContent).toBe(`Alder ${NASTY}`);
  const outside = [...document.querySelectorAll('[src],[href]')].map(
    (element) => element.getAttribute('src') ?? element.getAttribute('href') ?? '',
  );
  expect(outside).toHaveLength(PICTURES.length);
  for (const address of outside) expect(address).toMatch(/^data:(?:image\/png|application\/octet-stream);base64,/);
  expect(document.querySelector('meta[http-equiv]')?.getAttribute('content')).toContain("default-src 'none'");
  window.close();
});

test('what is no pack is told apart', async () => {
  for (const other of ['', '<html></html>', 'PK']) {
    expect(await verifyPack(other)).toMatchObject({ ok: false, reason: 'not-a-pack' });
    expect(script(other).status).toBe(2);
  }
});
