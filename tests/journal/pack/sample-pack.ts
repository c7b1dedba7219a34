import { createHash } from 'node:crypto';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { entryHash, hashOfText } from '../../../src/journal/entry-hash.ts';
import { DATA_START, openPack, PACK_TAIL, toHtml } from '../../../src/journal/pack/open-pack.ts';
import { packPage } from '../../../src/journal/pack/pack-page.ts';
import type { Envelope } from '../../../src/journal/read-entry.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { openTestStore, value } from '../../store/open-test-store.ts';

export const PICTURES = [Buffer.from('the first picture'), Buffer.from('another picture')] as const;
const hash = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/** What a page or a person could write to do harm. */
export const NASTY = `</pre><script>alert(1)</script>${DATA_START}"'&\u202e`;

/** A pack of one lot among others, with receipts, a result, an undone entry, two pictures, and private figures held back. */
export async function samplePack(): Promise<string> {
  const store = await openTestStore();
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Alder' } }, { facts: { make: 'Birch' } }]));
  const [lot, other] = [at(lots, 0), at(lots, 1)];
  const moment = instant(Date.UTC(2026, 3, 10, 14));
  value(await store.changeLot(lot, { set: { retail: { likely: cents(1_990_000) } } }));
  value(await store.noteBid(lot, { action: 'proxy-placed', cents: cents(900_000), at: moment }));
  value(await store.changeLot(other, { set: { notes: 'SECRET of another lot' } }));
  for (const [i, bytes] of PICTURES.entries())
    value(
      await store.keepAttachment(lot, {
        bytes: new Uint8Array(bytes),
        name: i === 0 ? `${NASTY}.png` : 'paper.html',
        mediaType: i === 0 ? 'image/png' : 'text/html',
        about: 'page-picture',
      }),
    );
  const page = { url: 'https://sale.example/lot/7', title: NASTY };
  const [slip] = value(await store.noteBid(lot, { action: 'live-bid', cents: cents(990_000), at: moment, page }));
  value(await store.noteResult(lot, { result: { ended: 'won', hammerCents: cents(985_000) }, at: moment }));
  if (slip !== undefined) value(await store.undo(slip.id));
  value(await store.changeLot(other, { set: { miles: 7 } }));
  const evidence = await store.evidenceOf(lot, 'sale');
  if (evidence === null) throw new Error('no evidence');
  const files = PICTURES.map((bytes, i) => ({
    hash: hash(bytes),
    name: i === 0 ? `${NASTY}.png` : 'paper.html',
    mediaType: i === 0 ? 'image/png' : 'text/html',
    sizeBytes: bytes.length,
    base64: bytes.toString('base64'),
  }));
  store.close();
  return packPage({
    title: `Alder ${NASTY}`,
    madeBy: 'Made by the buyer',
    facts: [['Make', NASTY]],
    moments: files.map((file) => ({ when: 'Fri', who: 'buyer', what: NASTY, hash: file.hash, files: [file.hash] })),
    files,
    ...evidence,
    script: `console.log("${DATA_START}")`,
  }).join('');
}

export type Line = Record<string, never> & {
  entry?: Envelope;
  held?: Omit<Envelope, 'content'> & { content: string };
  batch?: Omit<Envelope, 'happening'>;
  file?: { hash: string };
  heads?: { device: string; sequence: number; hash: string }[];
};

/** The lines of a pack's data as values, without the seal. */
export function linesIn(pack: string): Line[] {
  return value(openPack(pack))
    .lines.slice(0, -1)
    .map((line) => JSON.parse(line ?? ''));
}

/** The pack with other data or another readable part, sealed so well that only what is in it can show what was done. */
export function resealed(pack: string, lines: readonly object[], page = value(openPack(pack)).page): string {
  const data = lines.map((line) => `${JSON.stringify(line)}\n`);
  const seal = { seal: { page: hashOfText(page), data: hashOfText(data.join('')) } };
  return `${page}${DATA_START}${[...data, `${JSON.stringify(seal)}\n`].map(toHtml).join('')}${PACK_TAIL}`;
}

/** The entry with its hash made again. */
export const rehashed = (entry: Envelope): Envelope => ({ ...entry, hash: entryHash(entry) });
