import { instant } from '../../../src/domain/time/instant.ts';
import type { Entry, Subject } from '../../../src/journal/entry.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import { makeEntry, type WritingHead } from '../../../src/journal/make-entry.ts';
import { newDeviceId } from '../../../src/journal/sortable-id.ts';

/** Writes a journal by hand, each entry at a moment and in a person's name. */
export function writer() {
  let head: WritingHead = { device: newDeviceId(new Uint8Array(10)), sequence: 0, hash: '', lastId: null };
  const written: Entry[] = [];
  const write = (when: number, author: string, subject: Subject, happening: Happening): Entry => {
    const random = Uint8Array.from({ length: 8 }, (_, i) => (written.length * 31 + i) % 256);
    const { entry, head: next } = makeEntry(head, { subject, happening }, { at: instant(when), author, random });
    head = next;
    written.push(entry);
    return entry;
  };
  return {
    write,
    undo: (when: number, { id, subject }: Entry) => write(when, 'The buyer', subject, { kind: 'undone', entry: id }),
    entries: (): readonly Entry[] => written,
  };
}
