import * as z from 'zod/mini';
import { type LotId, lotIdSchema } from '../domain/lot/lot.ts';
import { type Instant, instant, instantSchema, shifted } from '../domain/time/instant.ts';
import { MINUTE } from '../domain/time/units.ts';
import { type EntryId, entryIdSchema } from '../journal/ids.ts';
import type { Envelope } from '../journal/read-entry.ts';
import { lotOfSubject, SETUP } from '../journal/subject.ts';
import { type Undo, undoneIds } from './undo.ts';

/** How often the journal was written in about a lot, and every close it ever had. */
export interface LotRevision {
  /** Of the lot and of the setup, from which its max bid follows. Never falls: an undo is an entry more. */
  readonly count: number;
  /** When the last of them was written. */
  readonly at: Instant;
  /** In the order in which they were written; one that was undone is among them. */
  readonly closes: readonly Instant[];
}

/** Lots that came in and whose arrival was undone, by one entry: a calendar may hold them still. */
export interface GoneArrival {
  readonly arrival: EntryId;
  /** The last entry that undid it. */
  readonly undone: EntryId;
}

// Only what is looked at, so that an entry of a newer version is understood as well, and 50,000 lots are read at once.
const factsWithClose = z.looseObject({ close: z.optional(z.looseObject({ instant: instantSchema })) });
const arrivals = z.looseObject({
  kind: z.literal('lots-added'),
  lots: z.array(z.looseObject({ id: lotIdSchema, facts: factsWithClose })),
});
const undoing = z.looseObject({ kind: z.literal('undone'), entry: entryIdSchema });
const change = z.looseObject({ kind: z.literal('lot-changed'), set: factsWithClose });
const extension = z.looseObject({ kind: z.literal('close-extended'), from: instantSchema, minutes: z.int() });

interface Gathered {
  count: number;
  at: number;
  readonly closes: Map<string, Instant>;
}

/** Gathers revisions from entries in any order, each entry once. */
export class LotRevisions {
  readonly #setup: Gathered = { count: 0, at: 0, closes: new Map() };
  readonly #lots = new Map<LotId, Gathered>();
  readonly #cameIn = new Map<LotId, EntryId>();
  readonly #undos = new Map<EntryId, Undo & { readonly at: Instant }>();

  add(entry: Envelope): void {
    const undo = undoing.safeParse(entry.happening);
    if (undo.success) this.#undos.set(entry.id, { id: entry.id, target: undo.data.entry, at: entry.at });
    const id = lotOfSubject(entry.subject);
    if (entry.subject === SETUP) written(this.#setup, entry);
    else if (id !== null) written(this.#gathered(id), entry, newClose(entry));
    else {
      const arrived = arrivals.safeParse(entry.happening);
      for (const { id, facts } of arrived.success ? arrived.data.lots : []) {
        this.#cameIn.set(id, entry.id);
        written(this.#gathered(id), entry, facts.close?.instant);
      }
    }
  }

  /** The arrivals that no longer count, the earliest first. */
  gone(): readonly GoneArrival[] {
    const undone = undoneIds(this.#undos.values());
    return [...new Set(this.#cameIn.values())]
      .filter((arrival) => undone.has(arrival))
      .map((arrival) => ({ arrival, undone: this.#undosOf(arrival).at(-1)?.id ?? arrival }));
  }

  /** Every undo that reaches an entry, and every undo of those, the earliest first. */
  #undosOf(entry: EntryId): (Undo & { readonly at: Instant })[] {
    if (this.#undos.size === 0) return [];
    const reached = new Set([entry]);
    // An undo has a greater id than what it undoes, so one way through them finds them all.
    return [...this.#undos.values()]
      .sort((a, b) => (a.id < b.id ? -1 : 1))
      .filter(({ id, target }) => reached.has(target) && reached.add(id));
  }

  of(id: LotId): LotRevision {
    const { count, at, closes } = this.#gathered(id);
    const cameIn = this.#cameIn.get(id);
    const undos = cameIn === undefined ? [] : this.#undosOf(cameIn);
    return {
      count: this.#setup.count + count + undos.length,
      at: instant(Math.max(this.#setup.at, at, ...undos.map((undo) => undo.at))),
      closes: [...closes].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, close]) => close),
    };
  }

  #gathered(id: LotId): Gathered {
    const known = this.#lots.get(id) ?? { count: 0, at: 0, closes: new Map() };
    this.#lots.set(id, known);
    return known;
  }
}

/** The close that an entry about a lot gave it. */
function newClose({ happening }: Envelope): Instant | undefined {
  const changed = change.safeParse(happening);
  if (changed.success) return changed.data.set.close?.instant;
  const later = extension.safeParse(happening);
  return later.success ? shifted(later.data.from, later.data.minutes * MINUTE) : undefined;
}

function written(about: Gathered, entry: Envelope, close?: Instant): void {
  about.count += 1;
  about.at = Math.max(about.at, entry.at);
  if (close !== undefined) about.closes.set(entry.id, close);
}
