import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { Happening } from '../../src/journal/happening.ts';
import type { PackShows } from '../../src/journal/happenings/row.ts';
import type { PackLine } from '../../src/journal/pack/pack-format.ts';
import { type PackFile, type PackMoment, packPage } from '../../src/journal/pack/pack-page.ts';
import { verifyPack } from '../../src/journal/pack/verify-pack.ts';
import { readEntry } from '../../src/journal/read-entry.ts';
import { fromBase64, toBase64 } from '../../src/store/backup/base64.ts';
import type { HistoryItem } from '../../src/store/journal/history.ts';
import type { Store } from '../../src/store/store.ts';
import { showsUnder } from '../../src/views/history/pack-choice.ts';
import { doneAt, sayHappening } from '../../src/views/history/say-happening.ts';
import { correctionsIn } from './corrections.ts';

/** What later entries made of earlier ones. */
interface Past {
  readonly undone: ReadonlySet<string>;
  readonly corrections: ReadonlySet<string>;
}

interface PackOrder {
  readonly store: Store;
  readonly setup: Setup;
  readonly lot: LotState;
  readonly history: readonly HistoryItem[];
  readonly shows: PackShows;
}

/** Makes the evidence pack of a lot, and checks it before it is handed out: one with a break in it is never given away. */
export async function makePack({ store, setup, lot, history, shows }: PackOrder): Promise<Outcome<Blob>> {
  const evidence = await store.evidenceOf(lot.id, showsUnder(shows));
  if (evidence === null) return refuse('no-lot', 'This lot is no longer here.');
  const [script, files, about] = await Promise.all([readScript(), filesIn(evidence.lines, store), store.about()]);
  const zone = setup.store.zone;
  const past: Past = {
    undone: new Set(history.filter(({ counts }) => !counts).map(({ id }) => id)),
    corrections: correctionsIn(history),
  };
  const parts = packPage({
    title: `${lotTitle(lot.facts)}: what happened at its sale`,
    madeBy: `Made by ${about.author} of ${setup.store.name || 'this store'} on ${sayTime(evidence.head.madeAt, zone)} (${zone}). All times are in that zone.`,
    facts: factsOf(lot, setup),
    moments: evidence.lines.flatMap((line) => momentOf(line, lot, past, (at) => sayTime(at, zone)) ?? []),
    files,
    ...evidence,
    script,
  });
  const blob = new Blob(parts, { type: 'text/html' });
  const checked = verifyPack(parts.join(''), fromBase64);
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
    const base64 = toBase64(new Uint8Array(await blob.arrayBuffer()));
    files.set(hash, { hash, name, mediaType, sizeBytes, base64 });
  }
  return [...files.values()];
}

function momentOf(line: PackLine, lot: LotState, past: Past, say: (at: Instant) => string): PackMoment | null {
  if ('held' in line) {
    const { held } = line;
    if (held.subject !== `lot:${lot.id}` && held.id !== lot.bornIn) return null;
    const what = held.id === lot.bornIn ? 'Added to the journal' : 'Something about this lot was recorded';
    return { when: say(held.at), who: held.author, what, remark: 'held back', hash: held.hash, files: [] };
  }
  if (!('entry' in line)) return null;
  const read = readEntry(line.entry);
  if (read.as === 'unreadable') return null;
  const { at, author, hash, id } = read.raw;
  const undone = past.undone.has(id);
  const correction = past.corrections.has(id) ? 'Correction: ' : '';
  const happening = read.as === 'known' ? read.entry.happening : null;
  return {
    when: say(at),
    who: author,
    what: happening === null ? 'Something a newer version wrote' : correction + sayInFull(happening, at, say),
    ...(undone && { remark: 'undone later' }),
    hash,
    files: happening?.kind === 'attachment-kept' ? [happening.attachment.hash] : [],
  };
}

/** With the moment and the page, which a time line on the screen shows in lines of their own. */
function sayInFull(happening: Happening, writtenAt: Instant, say: (at: Instant) => string): string {
  const done = doneAt(happening, writtenAt);
  const page = happening.kind === 'bid-noted' ? happening.bid.page : undefined;
  return [
    sayHappening(happening),
    done !== null && `Said to have happened ${say(done)}`,
    page !== undefined && `Page: ${page.title} (${page.url})`,
  ]
    .filter(Boolean)
    .join('. ');
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
