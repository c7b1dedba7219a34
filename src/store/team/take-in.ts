import type { Outcome } from '../../domain/outcome.ts';
import type { Entry } from '../../journal/entry.ts';
import { type Envelope, readEntry } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import type { Sighting, Stored } from '../../journal/witness.ts';
import { slicesIn } from '../backup/compare-with-journal.ts';
import { viewsSchema, type WriteTransaction } from '../connection/schema.ts';
import { keepSignedHeads, wellSigned } from '../signing/signed-heads.ts';
import { forgetFirstFolders } from '../views/first-folders.ts';
import { forgetFirstRows } from '../views/first-rows.ts';
import { changePlanBasis } from '../views/kept-plan.ts';
import { headWhereItEnds, readHead, writeHead } from '../write/head.ts';
import type { Session } from '../write/session.ts';
import { Touched } from '../write/touched.ts';
import { tryWrite } from '../write/try-write.ts';
import { addInSlices } from '../write/write-all.ts';
import { bringIn, whatIsBefore } from './bring-in.ts';
import { goesOn, newOf } from './new-of.ts';
import type { UndosSeen } from './undos-seen.ts';
import { keepWitness } from './witness.ts';

/**
 * Entries of one device, in the order of its chain, and its end after them. Each was read, and its hash made again, by who
 * hands them over: what only the journal can tell is asked here.
 */
export interface Arrived {
  readonly entries: readonly Envelope[];
  readonly head: SignedHead;
  readonly stored: Stored;
  readonly sighting: Sighting | null;
}

/** What was new of them. */
export interface TakenIn {
  readonly added: number;
  readonly same: number;
  /** A sentence for each thing that devices saw of each other and that does not fit. */
  readonly told: readonly string[];
}

/**
 * Brings entries of other devices into the journal, all of them or none, with the checks of a restored backup: no entry
 * is changed, no place in a chain is taken twice, no lot comes in twice, every chain goes on where it ended. Only the views
 * of what the entries are about are made again, once for all of them.
 */
export async function takeIn(
  session: Session,
  arrived: readonly Arrived[],
  undos: UndosSeen,
): Promise<Outcome<TakenIn>> {
  const signed = await wellSigned(arrived.map(({ head }) => head));
  const entries = arrived.flatMap((one) => one.entries);
  const touched = new Touched();
  const taken = await tryWrite(session, async (tx) => {
    const fresh = entries.length === 0 ? [] : await newOf(tx, entries, undos);
    if (fresh.length > 0) await addAndShow(tx, fresh, { undos, touched });
    if (signed.length > 0) await keepSignedHeads(tx, signed);
    const told = await keepWitness(tx, arrived);
    return { added: fresh.length, same: entries.length - fresh.length, told };
  });
  if (taken.ok && taken.value.added > 0) session.feed.announce(touched.asChange());
  return taken;
}

async function addAndShow(
  tx: WriteTransaction,
  fresh: readonly Envelope[],
  { undos, touched }: { readonly undos: UndosSeen; readonly touched: Touched },
): Promise<void> {
  await goesOn(tx, fresh);
  // Whoever draws or answers meanwhile gets its turn between slices.
  const slices = slicesIn(tx, { total: 3 * fresh.length });
  const entries: Entry[] = [];
  let [unknown, unreadable] = [0, 0];
  for (const raw of fresh) {
    const read = readEntry(raw);
    if (read.as === 'known') entries.push(read.entry);
    else if (read.as === 'unknown') unknown += 1;
    else unreadable += 1;
    if (slices.took()) await slices.turn();
  }
  entries.sort((a, b) => (a.id < b.id ? -1 : 1));
  const before = await whatIsBefore(tx, entries);
  await addInSlices(tx.objectStore('entries'), fresh, slices);
  await undos.add(tx, entries);
  writeHead(tx, await headWhereItEnds(tx, await readHead(tx)));
  await bringIn(tx, entries, { before, undone: undos.undone(), touched, slices });
  const views = viewsSchema.parse(await tx.objectStore('meta').get('views'));
  if (unknown + unreadable > 0)
    await tx
      .objectStore('meta')
      .put({ ...views, unknown: views.unknown + unknown, unreadable: views.unreadable + unreadable }, 'views');
  if (touched.lots.size > 0 || touched.setup) forgetFirstRows(tx);
  if (touched.lots.size > 0 || touched.setup || touched.books) forgetFirstFolders(tx);
  if (touched.lots.size > 0 || touched.setup || touched.books)
    changePlanBasis(tx, `taken in ${fresh.at(-1)?.id ?? ''}`);
}
