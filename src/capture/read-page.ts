import type { Instant } from '../domain/time/instant.ts';
import { BUDGET, type Budget } from './budget.ts';
import { shorten } from './dom/clean-text.ts';
import type { PageTree } from './dom/page-tree.ts';
import { snapshot } from './dom/snapshot.ts';
import type { Candidates } from './draft/candidates.ts';
import type { DraftLot, DraftLots, PageNote } from './draft/draft-lot.ts';
import { lotLink, pageAddress } from './lots/lot-link.ts';
import { lineThatSaleIsOver } from './lots/lot-over.ts';
import { lotSources } from './lots/lot-source.ts';
import { pageFacts } from './lots/page-facts.ts';
import { saleNamesOf } from './lots/page-sale.ts';
import { type LotPlan, planLots } from './lots/plan-lots.ts';
import { readLot } from './lots/read-lot.ts';
import { placesInList } from './lots/read-places.ts';
import { hiddenVins, type Tie, type TiesFound, tiesOf } from './lots/tied-fields.ts';
import type { ReadContext } from './read-context.ts';

/**
 * Reads the lot or lots that a page shows. Depends on nothing but its arguments, changes nothing in the document, and
 * does a bounded amount of work on any page.
 * @param url the address of the page; without http or https the page is not read
 * @param now the time at which the page stood so: countdowns are counted from it
 */
export function readPage(
  document: Document,
  url: string,
  now: Instant,
  context: ReadContext,
  budget: Budget = BUDGET,
): DraftLots {
  return readPageWithTies(document, url, now, context, budget).draft;
}

/** A page as it was read, and for each of its lots what ties figures to the car, worked out only if it is asked for. */
export interface PageReading {
  readonly draft: DraftLots;
  readonly ties: () => TiesFound;
}

/** The same, with what is needed to know whether a figure may be written down without being looked at. */
export function readPageWithTies(
  document: Document,
  url: string,
  now: Instant,
  context: ReadContext,
  budget: Budget = BUDGET,
): PageReading {
  const pageUrl = pageAddress(url);
  const nothing: DraftLots = { kind: 'none', pageUrl: pageUrl ?? '', readAt: now, lots: [], notes: [] };
  if (pageUrl === null) return { draft: { ...nothing, notes: [NOT_OUR_PAGE] }, ties: NO_TIES };
  const tree = snapshot(document, budget);
  const facts = pageFacts(tree, pageUrl, now, context, budget);
  const plan = planLots(tree, facts.marks, facts.tables);
  // What stands in a lot beyond the limit is that lot's, and holds for no other.
  const beyond = plan.lots.slice(budget.lots).flat();
  const shortened: LotPlan = {
    ...plan,
    lots: plan.lots.slice(0, budget.lots),
    skip: new Set([...plan.skip, ...beyond]),
  };
  const sources = lotSources(shortened, facts);
  const over = plan.kind === 'many' ? lineThatSaleIsOver(sources[0]?.shared.lines ?? []) : null;
  if (over !== null) return { draft: { ...nothing, notes: [saleOverNote(over.text)] }, ties: NO_TIES };
  const names = saleNamesOf(facts, shortened, sources);
  const notes = pageNotes(tree);
  const lots: DraftLot[] = [];
  const ties: (() => readonly Tie[])[] = [];
  const listed: Candidates[] = [];
  sources.forEach((source, at) => {
    const own = plan.kind === 'one' ? null : lotLink(plan.lots[at] ?? [], pageUrl, facts.base);
    const read = readLot(at, source, { plan: shortened, facts, names, link: own });
    notes.push(...read.notes);
    const link = own ?? read.url ?? pageUrl;
    if (!read.isLot) return;
    if (plan.kind === 'many') listed.push(read.candidates);
    lots.push({ key: keyOf(read.lot, link, lots), heading: read.heading, pageUrl: link, fields: read.lot, tied: [] });
    ties.push(() => tiesOf(read.lot, read.candidates, facts.marks));
  });
  if (listed.length > 0) notes.push(...placesInList(facts, listed));
  const kept = distinct(notes).slice(0, 40);
  if (lots.length === 0) return { draft: { ...nothing, notes: kept }, ties: NO_TIES };
  return {
    draft: { kind: plan.kind === 'one' ? 'one' : 'many', pageUrl, readAt: now, lots, notes: kept },
    ties: () => ({ lots: ties.map((of) => of()), hiddenVins: hiddenVins(tree) }),
  };
}

const saleOverNote = (line: string): PageNote => ({
  reason: 'lot-over',
  message: `The page says “${shorten(line, 80)}”, so none of its lots can be bid on. To note how one of yours ended, open it in the list.`,
});

const NO_TIES = (): TiesFound => ({ lots: [], hiddenVins: new Set() });

const NOT_OUR_PAGE: PageNote = {
  reason: 'not-our-page',
  message: 'This is one of the browser’s own pages and can’t be read. Open the lot on its sale site, or type it in.',
};

function pageNotes(tree: PageTree): PageNote[] {
  const notes: PageNote[] = [];
  if (tree.cut) {
    const message =
      'This page is too large to read to the end. Check that nothing is missing, or open the lot by itself.';
    notes.push({ reason: 'page-too-large', message });
  }
  if (tree.closedFrames > 0) {
    const message =
      'A part of this page comes from another site and could not be read. If the lot is in it, open that part in a tab of its own.';
    notes.push({ reason: 'frame-elsewhere', message });
  }
  return notes;
}

function distinct(notes: readonly PageNote[]): readonly PageNote[] {
  return [...new Map(notes.map((note) => [note.message, note])).values()];
}

/** The VIN where it is settled, else the lot's own address, else its place on the page. */
function keyOf(fields: DraftLot['fields'], link: string, before: readonly DraftLot[]): string {
  const vin = fields.vin?.settled === true ? fields.vin.readings[0]?.value : undefined;
  const key = (vin ?? link).slice(0, 190);
  return before.some((lot) => lot.key === key) ? `${key}#${before.length + 1}` : key;
}
