import { attempt } from '../../domain/attempt.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { changedLot, lotsBornIn } from '../../folds/fold-lots.ts';
import { setupAfter } from '../../folds/fold-setup.ts';
import { asUndo } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import { rowOf } from '../../journal/happening.ts';
import type { EntryId } from '../../journal/ids.ts';
import type { LotState } from '../../journal/states/lot-state.ts';
import { lotOfSubject, subjectOfLot } from '../../journal/subject.ts';
import type { ReadTransaction, WriteTransaction } from '../connection/schema.ts';
import type { Slices } from '../journal/slices.ts';
import { refoldAbout } from '../views/refold-about.ts';
import type { Touched } from '../write/touched.ts';

/** Of each lot, and of the setup, the last entry about it before others came in; nothing where there is none. */
export type Before = ReadonlyMap<string, EntryId>;

/** Asked before the entries are added. */
export async function whatIsBefore(tx: ReadTransaction, entries: readonly Entry[]): Promise<Before> {
  const subjects = new Set<string>();
  for (const entry of entries) {
    const { about } = rowOf(entry.happening);
    if (about === 'lot' || about === 'setup') subjects.add(entry.subject);
    for (const { id } of lotsBornIn(entry)) subjects.add(subjectOfLot(id));
  }
  const index = tx.objectStore('entries').index('subject');
  const before = new Map<string, EntryId>();
  const find = async (subject: string): Promise<void> => {
    const last = await index.openKeyCursor(IDBKeyRange.only(subject), 'prev');
    if (last !== null) before.set(subject, last.primaryKey as EntryId);
  };
  await Promise.all([...subjects].map(find));
  return before;
}

interface BringingIn {
  readonly before: Before;
  readonly undone: ReadonlySet<EntryId>;
  readonly touched: Touched;
  readonly slices: Slices;
}

/**
 * Brings the views up to date with entries that are in the journal now, given in the order of their ids. What sorts behind
 * all that was known of its lot is applied to the view; only what sorts between, and what undos reach, is folded anew.
 */
export async function bringIn(
  tx: WriteTransaction,
  entries: readonly Entry[],
  { before, undone, touched, slices }: BringingIn,
): Promise<void> {
  const again: Entry[] = [];
  const changes = new Map<LotId, Entry[]>();
  const lots = new Map<LotId, LotState>();
  const setup: Entry[] = [];
  const isBehind = (entry: Entry): boolean => (before.get(entry.subject) ?? '') < entry.id;
  for (const entry of entries) {
    const { about } = rowOf(entry.happening);
    const lot = lotOfSubject(entry.subject);
    if (about === 'arrival' && !undone.has(entry.id) && lotsBornIn(entry).every((born) => isNew(born, before)))
      for (const born of lotsBornIn(entry)) lots.set(born.id, born);
    else if (about === 'lot' && lot !== null && isBehind(entry)) changes.set(lot, [...(changes.get(lot) ?? []), entry]);
    else if (about === 'setup' && isBehind(entry)) setup.push(entry);
    else again.push(entry);
  }
  const [mixed, plain] = parted(changes, again);
  again.push(...mixed);
  await load(tx, lots, plain.keys());
  for (const [id, list] of plain) {
    const lot = lots.get(id);
    if (lot !== undefined) lots.set(id, after(lot, list, undone));
    if (slices.took(list.length)) await slices.turn();
  }
  for (const [id, lot] of lots) {
    touched.lots.add(id);
    // Nothing waits for it: what fails fails the whole transaction.
    tx.objectStore('lots')
      .put(lot)
      .catch(() => undefined);
    if (slices.took()) await slices.turn();
  }
  const isSetupAgain = again.some(isOfSetup);
  if (isSetupAgain) again.push(...setup);
  else if (setup.length > 0) await bringInSetup(tx, setup, undone);
  touched.setup ||= setup.length > 0;
  if (again.length > 0) await refoldAbout(tx, again, touched, undone);
}

const isNew = ({ id }: LotState, before: Before): boolean => !before.has(subjectOfLot(id));

/** Undos may be of anything: it is found out what they reach, and that is folded anew. */
const isOfSetup = (entry: Entry): boolean => rowOf(entry.happening).about === 'setup' || asUndo(entry) !== null;

/** A lot of which one entry has to be folded anew is folded anew whole. */
function parted(
  changes: ReadonlyMap<LotId, Entry[]>,
  again: readonly Entry[],
): [readonly Entry[], ReadonlyMap<LotId, Entry[]>] {
  const lots = new Set(again.flatMap((entry) => lotOfSubject(entry.subject) ?? []));
  const mixed = [...changes].filter(([id]) => lots.has(id)).flatMap(([, list]) => list);
  return [mixed, new Map([...changes].filter(([id]) => !lots.has(id)))];
}

/** The lots that are here, beside those that have just come in. */
async function load(tx: ReadTransaction, lots: Map<LotId, LotState>, ids: Iterable<LotId>): Promise<void> {
  const wanted = [...ids].filter((id) => !lots.has(id));
  const here = await Promise.all(wanted.map((id) => tx.objectStore('lots').get(id)));
  for (const lot of here) if (lot !== undefined) lots.set(lot.id, lot);
}

/** As foldLot goes on. */
function after(lot: LotState, entries: readonly Entry[], undone: ReadonlySet<EntryId>): LotState {
  let now = lot;
  for (const entry of entries) {
    if (undone.has(entry.id) || entry.id <= lot.bornIn) continue;
    const changed = attempt(() => changedLot(now, entry));
    if (changed.ok) now = changed.value;
  }
  return now;
}

async function bringInSetup(
  tx: WriteTransaction,
  entries: readonly Entry[],
  undone: ReadonlySet<EntryId>,
): Promise<void> {
  const store = tx.objectStore('setup');
  let setup = (await store.get('sections')) ?? null;
  for (const entry of entries) if (!undone.has(entry.id)) setup = setupAfter(setup, entry);
  if (setup !== null) await store.put(setup, 'sections');
}
