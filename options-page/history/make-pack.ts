import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { toBase64 } from '../../src/journal/base64.ts';
import type { PackShows } from '../../src/journal/happenings/row.ts';
import type { PackLine } from '../../src/journal/pack/pack-format.ts';
import { type PackFile, packPage } from '../../src/journal/pack/pack-page.ts';
import { verifyPack } from '../../src/journal/pack/verify-pack.ts';
import { readEntry } from '../../src/journal/read-entry.ts';
import { fileHash } from '../../src/store/attachments/file-hash.ts';
import type { Store } from '../../src/store/store.ts';
import { packMoments } from '../../src/views/history/pack-moments.ts';
import { sayHappening } from '../../src/views/history/say-happening.ts';

interface PackOrder {
  readonly store: Store;
  readonly setup: Setup;
  readonly lot: LotState;
  readonly shows: PackShows;
}

/** Makes the evidence pack of a lot, and checks it before it is handed out: one with a break in it is never given away. */
export async function makePack({ store, setup, lot, shows }: PackOrder): Promise<Outcome<Blob>> {
  const evidence = await store.evidenceOf(lot.id, shows);
  if (evidence === null) return refuse('no-lot', 'This lot is no longer here.');
  const [script, files, about] = await Promise.all([readScript(), filesIn(evidence.lines, store), store.about()]);
  const zone = setup.store.zone;
  const parts = packPage({
    title: `${lotTitle(lot.facts)}: what happened at its sale`,
    madeBy: `Made by ${about.author} of ${setup.store.name || 'this store'} on ${sayTime(evidence.head.madeAt, zone)} (${zone}). All times are in that zone.`,
    facts: factsOf(lot, setup),
    moments: packMoments(evidence.lines, { lot: lot.id, say: (at) => sayTime(at, zone) }),
    files,
    ...evidence,
    script,
  });
  const blob = new Blob(parts, { type: 'text/html' });
  const checked = await verifyPack(parts.join(''));
  if (!checked.ok) return checked;
  const [first] = checked.value.findings;
  if (first === undefined) return ok(blob);
  return refuse('broken', `The journal of this lot is broken, so no pack was made. ${first}`);
}

async function readScript(): Promise<string> {
  return (await fetch('/evidence/verify-pack.txt')).text();
}

/** The files that the shown entries name, in the order of the chain, each once. */
async function filesIn(lines: readonly PackLine[], store: Store): Promise<PackFile[]> {
  const files = new Map<string, PackFile>();
  for (const line of lines) {
    const read = 'entry' in line ? readEntry(line.entry) : null;
    if (read?.as !== 'known' || read.entry.happening.kind !== 'attachment-kept') continue;
    const { hash, name, mediaType, sizeBytes } = read.entry.happening.attachment;
    const blob = files.has(hash) ? null : await store.readAttachment(hash);
    if (blob === null) continue;
    const bytes = new Uint8Array(await blob.arrayBuffer());
    // One that the disk damaged is left out, and told as missing.
    if ((await fileHash(bytes)) !== hash) continue;
    const base64 = toBase64(bytes);
    files.set(hash, { hash, name, mediaType, sizeBytes, base64 });
  }
  return [...files.values()];
}

function factsOf({ facts, sale }: LotState, { store, venues }: Setup): [string, string][] {
  const venue = venues.find(({ id }) => id === facts.venueId)?.name ?? facts.venueName;
  const rows: [string, string | undefined][] = [
    ['VIN', facts.vin],
    ['Odometer', facts.miles === undefined ? undefined : `${facts.miles.toLocaleString('en-US')} mi`],
    ['Venue', venue],
    ['Sale', facts.sale],
    ['Lot', facts.lotNumber],
    ['Seller', facts.seller],
    ['Close as stated', facts.close?.text],
    ['Close by our clock', facts.close && sayTime(facts.close.instant, store.zone)],
    ['Page', facts.pageUrl],
    ['Result', sale?.result && sayHappening({ kind: 'result-noted', result: sale.result.result, at: sale.result.at })],
  ];
  return rows.filter((row): row is [string, string] => row[1] !== undefined && row[1] !== '');
}
