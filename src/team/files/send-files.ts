import type { Refusal } from '../../domain/outcome.ts';
import { hashOfText } from '../../journal/entry-hash.ts';
import type { Hash } from '../../journal/ids.ts';
import { type FilesWay, sendFile } from './send-file.ts';

/** Up to which of this device's entries the files that they name are on the server. */
export interface FilesSent {
  readonly sequence: number;
  /** The last message with a piece of one, and its hash, by which a server that was restored is told; 0 and ''. */
  readonly place: number;
  readonly hash: string;
}
export const NO_FILES_SENT: FilesSent = { sequence: 0, place: 0, hash: '' };

/** What sending files needs of the journal. */
export interface OwnFiles {
  /** The files that this device's next entries behind a number name; null when there are no more entries. */
  ownFilesAfter(sequence: number): Promise<{ readonly hashes: readonly Hash[]; readonly upTo: number } | null>;
  file(hash: string): Promise<Blob | null>;
  filesSent(): Promise<FilesSent | null>;
  noteFilesSent(sent: FilesSent): Promise<void>;
}

/**
 * Sends the files that this device's entries name, after the entries: nothing waits for them. One that is not here any more,
 * or damaged, costs only itself: whoever fetches it is told.
 * @returns why the rest was not sent; null when all was
 */
export async function sendFiles(files: OwnFiles, way: FilesWay): Promise<Refusal | null> {
  let sent = (await files.filesSent()) ?? NO_FILES_SENT;
  if (sent.place > 0) {
    const there = await way.wire.at(sent.place);
    if (!there.ok) return there;
    // The server was restored from an older copy, or replaced: each file is asked for again.
    if (there.value === null || hashOfText(there.value.data) !== sent.hash) sent = NO_FILES_SENT;
  }
  for (;;) {
    const next = await files.ownFilesAfter(sent.sequence);
    if (next === null) return null;
    for (const hash of next.hashes) {
      const blob = await files.file(hash);
      if (blob === null) continue;
      const done = await sendFile(way, { hash, blob });
      if (!done.ok) return done;
      const { place, data } = done.value;
      if (place > sent.place) sent = { ...sent, place, hash: hashOfText(data) };
    }
    sent = { ...sent, sequence: next.upTo };
    await files.noteFilesSent(sent);
  }
}
