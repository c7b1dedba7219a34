import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';
import type { UndoneBooking } from '../journal/states/books-state.ts';
import { asUndo, undoneIds } from './undo.ts';

/** What was recorded in the books and undone as a whole, the last one undone first, each with the undo that can be undone. */
export function undoneBookings(entries: Iterable<Entry>): UndoneBooking[] {
  const all = new Map<EntryId, Entry>();
  for (const entry of entries) all.set(entry.id, entry);
  const undos = [...all.values()].flatMap((entry) => asUndo(entry) ?? []);
  const undone = undoneIds(undos);
  const found = undos.flatMap(({ id, target }): UndoneBooking[] => {
    const [undo, booked] = [all.get(id), all.get(target)];
    if (undone.has(id) || undo === undefined || booked === undefined || !undone.has(target)) return [];
    const { happening } = booked;
    if (
      happening.kind !== 'costs-booked' &&
      happening.kind !== 'invoice-confirmed' &&
      happening.kind !== 'payment-booked'
    )
      return [];
    return [{ entry: booked.id, undoneBy: id, undoneAt: undo.at, author: undo.author, happening }];
  });
  return found.sort((a, b) => (a.undoneBy < b.undoneBy ? 1 : -1));
}
