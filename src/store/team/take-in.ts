import type { LotId } from '../../domain/lot/lot.ts';
import type { Outcome } from '../../domain/outcome.ts';
import { lotsBornIn } from '../../folds/fold-lots.ts';
import { canonicalJson } from '../../journal/canonical-json.ts';
import type { Entry } from '../../journal/entry.ts';
import { type Envelope, readEntry } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import { checkLinks, linkOf } from '../../journal/verify-chain.ts';
import { conflictsWith } from '../backup/conflicts.ts';
import { viewsSchema, type WriteTransaction } from '../connection/schema.ts';
import { keepSignedHeads, wellSigned } from '../signing/signed-heads.ts';
import { forgetFirstRows } from '../views/first-rows.ts';
import { changePlanBasis } from '../views/kept-plan.ts';
import { known } from '../views/refold.ts';
import { refoldAbout } from '../views/refold-about.ts';
import { headWhereItEnds, lastOf, readHead, writeHead } from '../write/head.ts';
import { Refused } from '../write/refused.ts';
import type { Session } from '../write/session.ts';
import { Touched } from '../write/touched.ts';
import { tryWrite } from '../write/try-write.ts';
import { addAll } from '../write/write-all.ts';

const CONFLICT = conflictsWith({ there: 'in what the team sent', end: 'None of this message was taken in.' });

/** Entries of one device, in the order of its chain, and its end after them. */
export interface Arrived {
  readonly entries: readonly Envelope[];
  readonly head: SignedHead;
}

/** What was new of them. */
export interface TakenIn {
  readonly added: number;
  readonly same: number;
}

/**
 * Brings entries of another device into the journal, all of them or none, with the checks of a restored backup: no entry
 * is changed, no place in a chain is taken twice, no lot comes in twice, every chain goes on where it ended. Only the views
 * of what the entries are about are made again.
 */
export async function takeIn(session: Session, { entries, head }: Arrived): Promise<Outcome<TakenIn>> {
  const signed = await wellSigned([head]);
  const touched = new Touched();
  const taken = await tryWrite(session, async (tx) => {
    const fresh = await newOf(tx, entries);
    if (fresh.length > 0) {
      await goesOn(tx, fresh);
      addAll(tx.objectStore('entries'), fresh);
      await changeViews(tx, fresh, touched);
    }
    await keepSignedHeads(tx, signed);
    return { added: fresh.length, same: entries.length - fresh.length };
  });
  if (taken.ok && taken.value.added > 0) session.feed.announce(touched.asChange());
  return taken;
}

/** Those that are not here. @throws Refused when they can't be of one journal with what is */
async function newOf(tx: WriteTransaction, entries: readonly Envelope[]): Promise<Envelope[]> {
  const store = tx.objectStore('entries');
  const fresh: Envelope[] = [];
  for (const raw of entries) {
    const same = await store.get(raw.id);
    if (same !== undefined) {
      if (canonicalJson(same) === canonicalJson(raw)) continue;
      throw refused(CONFLICT.different(same));
    }
    const place = await store.index('sequence').get([raw.device, raw.sequence]);
    if (place !== undefined) throw refused(CONFLICT.forked(place));
    fresh.push(raw);
  }
  const born = known(fresh).flatMap(lotsBornIn);
  const here = born.length === 0 ? new Set<LotId>() : await everBorn(tx);
  for (const { id } of born) {
    if (here.has(id)) throw refused(CONFLICT.bornTwice(id));
    here.add(id);
  }
  return fresh;
}

/** Every lot that is here, and those whose arrival was undone. */
async function everBorn(tx: WriteTransaction): Promise<Set<LotId>> {
  const here = new Set(await tx.objectStore('lots').getAllKeys());
  const undos = known(await tx.objectStore('entries').index('undoes').getAll());
  for (const { happening } of undos) {
    if (happening.kind !== 'undone') continue;
    const raw = await tx.objectStore('entries').get(happening.entry);
    if (raw?.happening.kind === 'lots-added') for (const { id } of known([raw]).flatMap(lotsBornIn)) here.add(id);
  }
  return here;
}

/** @throws Refused when the entries do not follow what is here of their device */
async function goesOn(tx: WriteTransaction, fresh: readonly Envelope[]): Promise<void> {
  const after = new Map();
  for (const device of new Set(fresh.map((raw) => raw.device))) {
    const last = await lastOf(tx, device);
    if (last !== null) after.set(device, last);
  }
  const [finding] = checkLinks(fresh.map(linkOf), after);
  if (finding !== undefined) throw new Refused('broken-chain', `${finding.message} None of this message was taken in.`);
}

async function changeViews(tx: WriteTransaction, fresh: readonly Envelope[], touched: Touched): Promise<void> {
  const entries: Entry[] = [];
  let [unknown, unreadable] = [0, 0];
  for (const raw of fresh) {
    const read = readEntry(raw);
    if (read.as === 'known') entries.push(read.entry);
    else if (read.as === 'unknown') unknown += 1;
    else unreadable += 1;
  }
  writeHead(tx, await headWhereItEnds(tx, await readHead(tx)));
  await refoldAbout(tx, entries, touched);
  const views = viewsSchema.parse(await tx.objectStore('meta').get('views'));
  if (unknown + unreadable > 0)
    await tx
      .objectStore('meta')
      .put({ ...views, unknown: views.unknown + unknown, unreadable: views.unreadable + unreadable }, 'views');
  if (touched.lots.size > 0 || touched.setup) forgetFirstRows(tx);
  if (touched.lots.size > 0 || touched.setup || touched.books)
    changePlanBasis(tx, `taken in ${fresh.at(-1)?.id ?? ''}`);
}

const refused = ({ reason, message }: { readonly reason: string; readonly message: string }): Refused =>
  new Refused(reason, message);
