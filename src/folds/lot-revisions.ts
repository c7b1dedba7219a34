import * as z from 'zod/mini';
import { type LotId, lotIdSchema } from '../domain/lot/lot.ts';
import { type Instant, instant, instantSchema, shifted } from '../domain/time/instant.ts';
import { MINUTE } from '../domain/time/units.ts';
import type { Envelope } from '../journal/read-entry.ts';
import { lotOfSubject, SETUP } from '../journal/subject.ts';

/** How often the journal was written in about a lot, and every close it ever had. */
export interface LotRevision {
  /** Of the lot and of the setup, from which its max bid follows. Never falls: an undo is an entry more. */
  readonly count: number;
  /** When the last of them was written. */
  readonly at: Instant;
  /** In the order in which they were written; one that was undone is among them. */
  readonly closes: readonly Instant[];
}

// Only what is looked at, so that an entry of a newer version is understood as well, and 50,000 lots are read at once.
const factsWithClose = z.looseObject({ close: z.optional(z.looseObject({ instant: instantSchema })) });
const arrivals = z.looseObject({
  kind: z.literal('lots-added'),
  lots: z.array(z.looseObject({ id: lotIdSchema, facts: factsWithClose })),
});
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

  add(entry: Envelope): void {
    const id = lotOfSubject(entry.subject);
    if (entry.subject === SETUP) written(this.#setup, entry);
    else if (id !== null) written(this.#gathered(id), entry, newClose(entry));
    else {
      const arrived = arrivals.safeParse(entry.happening);
      for (const { id, facts } of arrived.success ? arrived.data.lots : [])
        written(this.#gathered(id), entry, facts.close?.instant);
    }
  }

  of(id: LotId): LotRevision {
    const { count, at, closes } = this.#gathered(id);
    return {
      count: this.#setup.count + count,
      at: instant(Math.max(this.#setup.at, at)),
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
