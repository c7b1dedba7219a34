import { type Outcome, ok, type Refusal } from '../domain/outcome.ts';
import type { Happening } from '../journal/happening.ts';
import { BOOKS, subjectOfLot } from '../journal/subject.ts';
import { PLAN_VERSION } from '../views/plan/kept-plan.ts';
import { keepAttachment } from './attachments/keep-attachment.ts';
import { attachmentsOf, readAttachment } from './attachments/read-attachments.ts';
import { previewRestore } from './backup/compare-with-journal.ts';
import { restore } from './backup/restore.ts';
import { writeBackup } from './backup/write-backup.ts';
import { about, noteBackup, readAuthor, setAuthor } from './connection/about.ts';
import { checkJournal } from './journal/check-journal.ts';
import { evidenceOf } from './journal/evidence.ts';
import { historyOfLot, historyOfSubject, lifeOfLot } from './journal/history.ts';
import { watchJournal } from './journal/watch-journal.ts';
import { openSession } from './open-session.ts';
import { knownKeys } from './signing/signed-heads.ts';
import { addStamp, headWithImprint, knownStamps } from './signing/stamps.ts';
import type { Store, StoreOptions } from './store.ts';
import { teamDevices, teamStanding } from './team/team-state.ts';
import { readBeliefAt, readBeliefs, readBooks, readEntriesOf } from './views/books.ts';
import { keepFirstFolders } from './views/first-folders.ts';
import { keepFirstRows } from './views/first-rows.ts';
import { keepPlan, readPlan, readPlanInputs } from './views/kept-plan.ts';
import { goneLots, lotRevisions } from './views/lot-revisions.ts';
import { allLots, disputedLots, lot, lotsAfterSale, lotsByClose, lotsByVin, lotsInDoubt } from './views/read-lots.ts';
import { rebuildViews } from './views/rebuild-views.ts';
import { purse, saveSetup, setPurse, setup } from './views/setup-view.ts';
import { lastWritten, putClockRight, recordShown, shownAlerts } from './views/shown-alerts.ts';
import { addLots } from './write/add-lots.ts';
import { append } from './write/append.ts';
import { changeAfter } from './write/change-after.ts';
import type { Session } from './write/session.ts';
import { undoEntries } from './write/undo-entries.ts';

/**
 * Opens the journal and its views, bringing them up to this version. The reasons of a refusal are those of
 * storage-failure.ts; each has a sentence for the user, and none has changed anything.
 */
export async function openStore(options: StoreOptions): Promise<Outcome<Store, Refusal>> {
  const opened = await openSession(options);
  if (!opened.ok) return opened;
  const { session, hasChannel } = opened.value;
  return ok(storeOf(session, hasChannel ? () => undefined : watchJournal(session, session.feed)));
}

function storeOf(session: Session, stopWatching: () => void): Store {
  return {
    append: (changes) => append(session, changes),
    addLots: (source, lots, options) => addLots(session, source, lots, options),
    changeLot(id, { set = {}, clear = [], evidence = {}, seenAt, confirmed }) {
      const change = {
        set,
        clear: [...clear],
        evidence: { ...evidence },
        ...(seenAt !== undefined && { seenAt }),
        ...(confirmed && { confirmed }),
      };
      const happening: Happening = { kind: 'lot-changed', ...change };
      return append(session, [{ subject: subjectOfLot(id), happening }]);
    },
    changeAfter: (id, decide) => changeAfter(session, id, decide),
    noteBid: (id, bid) => append(session, [{ subject: subjectOfLot(id), happening: { kind: 'bid-noted', bid } }]),
    noteResult: (id, note) =>
      append(session, [{ subject: subjectOfLot(id), happening: { kind: 'result-noted', ...note } }]),
    book: (...happenings) =>
      append(
        session,
        happenings.map((happening) => ({ subject: BOOKS, happening })),
      ),
    dropLot: (id) => append(session, [{ subject: subjectOfLot(id), happening: { kind: 'lot-dropped' } }]),
    saveSetup: (sections) => saveSetup(session, sections),
    recordShown: (keys) => recordShown(session, keys),
    keepAttachment: (lot, file) => keepAttachment(session, lot, file),
    putClockRight: (wrong) => putClockRight(session, wrong),
    undo: (...ids) => undoEntries(session, ids),
    lot: (id) => lot(session, id),
    lotsByClose: (options = {}) => lotsByClose(session, options),
    lotsInDoubt: (from, before) => lotsInDoubt(session, from, before),
    allLots: () => allLots(session),
    lotsAfterSale: () => lotsAfterSale(session),
    disputedLots: () => disputedLots(session),
    lotsByVin: (vin) => lotsByVin(session, vin),
    attachmentsOf: (lot) => attachmentsOf(session, lot),
    readAttachment: (hash) => readAttachment(session, hash),
    room: () => session.room(),
    setup: () => setup(session),
    purse: () => purse(session),
    setPurse: (counted) => setPurse(session, counted),
    shownAlerts: () => shownAlerts(session),
    lastWritten: () => lastWritten(session),
    books: () => readBooks(session),
    believedAt: (lot, at) => readBeliefAt(session, lot, at),
    beliefs: (wanted) => readBeliefs(session, wanted),
    entriesOf: (lots) => readEntriesOf(session, lots),
    historyOfLot: (id) => historyOfLot(session, id),
    lifeOfLot: (id) => lifeOfLot(session, id),
    historyOfSetup: () => historyOfSubject(session, 'setup'),
    evidenceOf: (lot, shows) => evidenceOf(session, lot, shows),
    lotRevisions: () => lotRevisions(session),
    goneLots: (revisions) => goneLots(session, revisions),
    backup: () => writeBackup(session),
    noteBackup: (file) => noteBackup(session, file.header),
    knownKeys: () => knownKeys(session),
    stamps: () => knownStamps(session),
    headWithImprint: (imprint) => headWithImprint(session, imprint),
    addStamp: (stamp) => addStamp(session, stamp),
    previewRestore: (backup, work) => previewRestore(session, backup, work),
    restore: (backup, how) => restore(session, backup, how),
    about: () => about(session),
    author: () => readAuthor(session),
    setAuthor: (name) => setAuthor(session, name),
    checkJournal: (noted) => checkJournal(session, noted),
    rebuildViews: () => rebuildViews(session),
    plan: () => readPlan(session, PLAN_VERSION),
    planInputs: () => readPlanInputs(session),
    keepPlan: (plan) => keepPlan(session, plan),
    keepFirstRows: (options) => keepFirstRows(session, options),
    team: () => teamStanding(session),
    teamDevices: () => teamDevices(session),
    keepFirstFolders: (options) => keepFirstFolders(session, options),
    subscribe: (listener) => session.feed.subscribe(listener),
    close() {
      stopWatching();
      session.feed.close();
      session.connection.close();
    },
  };
}
