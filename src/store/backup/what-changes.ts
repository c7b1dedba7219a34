import type { LotId } from '../../domain/lot/lot.ts';
import { lotsBornIn } from '../../folds/fold-lots.ts';
import { asUndo, type Undo, undoneIds } from '../../folds/undo.ts';
import { canonicalJson } from '../../journal/canonical-json.ts';
import type { Entry } from '../../journal/entry.ts';
import { type Happening, rowOf } from '../../journal/happening.ts';
import type { EntryId } from '../../journal/ids.ts';
import { lotOfSubject } from '../../journal/subject.ts';
import type { Slices } from '../journal/slices.ts';

/** What one of the two says of something of which only one value can hold. */
export interface Said extends Pick<Entry, 'id' | 'at' | 'author'> {
  readonly happening: Happening;
}

/** Here and in the backup the same thing was set to different values. Both stay in the journal; the later one holds. */
export interface Clash {
  /** Null when it is about no single lot. */
  readonly lot: LotId | null;
  readonly here: Said;
  readonly there: Said;
  readonly holds: 'here' | 'there';
}

/** What the entries that come in change here, in what one looks at. */
export interface RestoreChanges {
  readonly lotsAdded: number;
  /** Lots that are here, or were, and about which something comes in. */
  readonly lotsChanged: readonly LotId[];
  /** Entries about the setup. */
  readonly setup: number;
  readonly booked: number;
  /** Undos, of whatever. */
  readonly undos: number;
  readonly clashes: readonly Clash[];
}

interface Slot extends Said {
  readonly slot: string;
  readonly value: string;
  readonly lot: LotId | null;
}

/** Collects what is only here and what comes in, and then says what that changes and where the two clash. */
export class WhatChanges {
  private readonly undos: Undo[] = [];
  private readonly here: Slot[] = [];
  private readonly incoming: Entry[] = [];

  addHere(entry: Entry): void {
    this.noteUndo(entry);
    this.here.push(...slotsOf(entry));
  }

  addIncoming(entry: Entry): void {
    this.noteUndo(entry);
    this.incoming.push(entry);
  }

  private noteUndo(entry: Entry): void {
    const undo = asUndo(entry);
    if (undo !== null) this.undos.push(undo);
  }

  /** @throws Refused when the slices were stopped */
  async changes(slices: Slices): Promise<RestoreChanges> {
    const undone: ReadonlySet<EntryId> = undoneIds(this.undos);
    const born = new Set<LotId>();
    const touched = new Set<LotId>();
    let [setup, booked, undos] = [0, 0, 0];
    const there = new Latest(undone);
    for (const entry of this.incoming) {
      if (slices.took(0)) await slices.turn();
      if (undone.has(entry.id)) continue;
      for (const { id } of lotsBornIn(entry)) born.add(id);
      const { about } = rowOf(entry.happening);
      const lot = about === 'lot' ? lotOfSubject(entry.subject) : null;
      if (lot !== null) touched.add(lot);
      if (about === 'setup') setup += 1;
      if (about === 'books') booked += 1;
      if (about === 'undo') undos += 1;
      for (const slot of slotsOf(entry)) there.add(slot);
    }
    const here = new Latest(undone);
    for (const slot of this.here) {
      here.add(slot);
      if (slices.took(0)) await slices.turn();
    }
    await slices.turn();
    return {
      lotsAdded: born.size,
      lotsChanged: [...touched].filter((id) => !born.has(id)),
      setup,
      booked,
      undos,
      clashes: clashesOf(here.slots, there.slots),
    };
  }
}

/** The last that counts of each slot. */
class Latest {
  readonly slots = new Map<string, Slot>();
  private readonly undone: ReadonlySet<EntryId>;

  constructor(undone: ReadonlySet<EntryId>) {
    this.undone = undone;
  }

  add(slot: Slot): void {
    if (!this.undone.has(slot.id) && slot.id > (this.slots.get(slot.slot)?.id ?? '')) this.slots.set(slot.slot, slot);
  }
}

function clashesOf(here: ReadonlyMap<string, Slot>, there: ReadonlyMap<string, Slot>): Clash[] {
  return [...here].flatMap(([slot, ours]) => {
    const theirs = there.get(slot);
    if (theirs === undefined || theirs.value === ours.value) return [];
    return { lot: ours.lot, here: ours, there: theirs, holds: ours.id > theirs.id ? 'here' : 'there' } as const;
  });
}

/** What an entry sets of which only one value can hold: fields of a lot, its result, sections of the setup, a month's end. */
function slotsOf(entry: Entry): Slot[] {
  const { id, at, author, happening } = entry;
  const lot = lotOfSubject(entry.subject);
  const slot = (name: string, value: unknown, said: Happening): Slot => ({
    ...{ id, at, author, lot, happening: said },
    slot: `${entry.subject} ${name}`,
    value: canonicalJson(value ?? null),
  });
  switch (happening.kind) {
    case 'lot-changed':
      return [
        ...Object.entries(happening.set).map(([field, value]) =>
          slot(field, value, { kind: 'lot-changed', set: { [field]: value }, clear: [], evidence: {} }),
        ),
        ...happening.clear.map((field) =>
          slot(field, null, { kind: 'lot-changed', set: {}, clear: [field], evidence: {} }),
        ),
      ];
    case 'result-noted':
      return [slot('result', happening.result, happening)];
    case 'setup-changed':
      return Object.entries(happening.set).map(([section, value]) =>
        slot(section, value, { kind: 'setup-changed', set: { [section]: value } }),
      );
    case 'month-closed':
      return [slot(`month ${happening.month}`, happening.transactions, happening)];
    default:
      return [];
  }
}
