import { asUndo, type Undo, undoneIds } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';

/** What the entries of a backup say of each other, and how many lots they bring in. */
export class NamedEntries {
  private readonly undos: Undo[] = [];
  /** By the entry that brought them in. */
  private readonly lots = new Map<string, number>();
  private readonly named: { readonly by: Pick<Entry, 'sequence' | 'device'>; readonly id: string }[] = [];

  add(entry: Entry): void {
    const { id, sequence, device, happening } = entry;
    const undo = asUndo(entry);
    if (undo !== null) this.undos.push(undo);
    if (happening.kind === 'lots-added') this.lots.set(id, happening.lots.length);
    const named = undo?.target ?? ('dispute' in happening ? happening.dispute : null);
    if (named !== null) this.named.push({ by: { sequence, device }, id: named });
  }

  /** Lots whose arrival was undone are not counted. */
  lotsThatCount(): number {
    const undone: ReadonlySet<string> = undoneIds(this.undos);
    let count = 0;
    for (const [id, lots] of this.lots) if (!undone.has(id)) count += lots;
    return count;
  }

  /** A sentence for each entry that speaks of one that is not there: an undo, or a step of a dispute. */
  missing(ids: ReadonlySet<string>): string[] {
    return this.named
      .filter(({ id }) => !ids.has(id))
      .map(
        ({ by }) => `Entry number ${by.sequence} of device ${by.device} speaks of an entry that is not in this file.`,
      );
  }
}
