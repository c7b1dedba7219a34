import { readdirSync, readFileSync } from 'node:fs';
import { makePack } from '../../../options-page/history/make-pack.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { wholeSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { PackShows } from '../../../src/journal/happenings/row.ts';
import type { Store } from '../../../src/store/store.ts';
import { value } from './machine.ts';
import { oldJournal } from './old-journal.ts';
import { type Signed, tellStory } from './story.ts';
import { otherStamps } from './time-office.ts';

/** What is known of a sample beside its text. */
export interface About {
  readonly target: 'pack' | 'backup';
  /** Of a pack: the lot. */
  readonly lot?: string;
  /** Fingerprints that were noted on the way, as text, by a name. */
  readonly noted: Readonly<Record<string, string>>;
  /** True signatures by the devices' own keys, over other texts than the head that the file ends with. */
  readonly signed?: Readonly<Record<string, Signed>>;
  /** Stamps other than the true one, in base 64, by what is odd about them. */
  readonly stamps?: Readonly<Record<string, string>>;
}

/** Honest files to start from, by name. */
export interface Samples {
  readonly about: Readonly<Record<string, About>>;
  readonly text: (name: string) => string;
}

const BACKUPS = 'tests/fixtures/backups';
const PACKS = 'tests/fixtures/packs';

/** Makes every sample with the program's own functions, and takes those of earlier releases as they are stored. */
export async function honestSamples(): Promise<Samples> {
  globalThis.fetch = async () => new Response('// The script to check this page with stands here.\n');
  const texts = new Map<string, string>();
  const about: Record<string, About> = {};
  const save = async (name: string, blob: Blob, facts: About) => {
    texts.set(name, Buffer.from(await blob.arrayBuffer()).toString('utf8'));
    about[name] = facts;
  };
  const told = await tellStory({ files: true });
  const stamps = await otherStamps(told.noted['buyer-friday'] ?? '');
  for (const shows of ['everything', 'dispute', 'sale'] as const)
    await save(`pack-single-${shows}.html`, await packOf(told.buyer, told.single, shows), {
      target: 'pack',
      lot: told.single,
      noted: told.noted,
      signed: told.signed,
      stamps,
    });
  await save('pack-batch-everything.html', await packOf(told.buyer, told.fromBatch, 'everything'), {
    target: 'pack',
    lot: told.fromBatch,
    noted: told.noted,
    signed: told.signed,
    stamps,
  });
  await save('backup-files.jsonl', (await told.buyer.backup()).blob, {
    target: 'backup',
    noted: told.noted,
    signed: told.signed,
    stamps,
  });
  const plain = await tellStory({ files: false });
  const plainStamps = await otherStamps(plain.noted['buyer-friday'] ?? '');
  await save('backup-plain.jsonl', (await plain.buyer.backup()).blob, {
    target: 'backup',
    noted: plain.noted,
    signed: plain.signed,
    stamps: plainStamps,
  });
  const old = await oldJournal();
  await save('pack-old-everything.html', await packOf(old.store, old.lot, 'everything'), {
    target: 'pack',
    lot: old.lot,
    noted: old.noted,
  });
  await save('backup-old.jsonl', new Blob([old.text]), { target: 'backup', noted: old.noted });
  for (const name of readdirSync(BACKUPS))
    await save(`backup-fixture-${name}`, stored(`${BACKUPS}/${name}`), { target: 'backup', noted: {} });
  const ofPacks: Record<string, About> = JSON.parse(readFileSync(`${PACKS}/about.json`, 'utf8'));
  for (const [name, facts] of Object.entries(ofPacks)) await save(name, stored(`${PACKS}/${name}`), facts);
  return {
    about,
    text(name) {
      const text = texts.get(name);
      if (text === undefined) throw new Error(`there is no sample ${name}`);
      return text;
    },
  };
}

const stored = (file: string): Blob => new Blob([readFileSync(file)]);

async function packOf(store: Store, id: LotId, shows: PackShows): Promise<Blob> {
  const lot = await store.lot(id);
  if (lot === null) throw new Error('the lot of the sample is not there');
  const setup = wholeSetup(await store.setup(), zone('America/Boise'));
  return value(await makePack({ store, setup, lot, shows }));
}
