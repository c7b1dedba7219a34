import type { Outcome } from '../../domain/outcome.ts';
import { filesNamedIn } from '../../folds/files-named-in.ts';
import { type Hash, hashSchema } from '../../journal/ids.ts';
import { fileHash } from '../attachments/file-hash.ts';
import type { FilesSent, ReadTransaction } from '../connection/schema.ts';
import { known } from '../views/refold.ts';
import { readHead } from '../write/head.ts';
import type { Session } from '../write/session.ts';
import { tryWrite } from '../write/try-write.ts';

/** What a team's files need of this browser: those that it names, and a shelf for pieces of those that it fetches. */
export interface TeamFiles {
  /** The files that the next of this browser's entries behind a number name; null when there are no more entries. */
  ownFilesAfter(sequence: number): Promise<{ readonly hashes: readonly Hash[]; readonly upTo: number } | null>;
  file(hash: string): Promise<Blob | null>;
  filesSent(): Promise<FilesSent | null>;
  noteFilesSent(sent: FilesSent): Promise<void>;
  /** Its first pieces that are here, of how many in all, and the message that held the last. */
  piecesOf(hash: string): Promise<PiecesHere>;
  keepPiece(hash: string, here: PiecesHere, bytes: Uint8Array<ArrayBuffer>): Promise<Outcome<null>>;
  /** Puts the pieces together and forgets them; false when they are not the file. */
  makeWhole(hash: string, mediaType: string): Promise<Outcome<boolean>>;
}

interface PiecesHere {
  readonly here: number;
  readonly count: number;
  readonly place: number;
}

/** Entries looked at in one transaction. */
const PAGE = 500;

export function teamFiles(session: Session): TeamFiles {
  const { read, write } = session.connection;
  const allOf = (hash: string): IDBKeyRange => IDBKeyRange.bound([hash, 0], [hash, Number.POSITIVE_INFINITY]);
  return {
    ownFilesAfter: (sequence) => read((tx) => filesAfter(tx, sequence)),
    file: (hash) => read(async (tx) => (await tx.objectStore('files').get(hash))?.blob ?? null),
    filesSent: () => read(async (tx) => ((await tx.objectStore('meta').get('team-files')) as FilesSent) ?? null),
    noteFilesSent: (sent) =>
      write(async (tx) => {
        await tx.objectStore('meta').put(sent, 'team-files');
      }),
    piecesOf: (hash) =>
      read(async (tx) => {
        const last = await tx.objectStore('pieces').openCursor(allOf(hash), 'prev');
        if (last === null) return { here: 0, count: 0, place: 0 };
        const { number, count, place } = last.value;
        return { here: number, count, place };
      }),
    keepPiece: (hash, { here: number, count, place }, bytes) =>
      tryWrite(session, async (tx) => {
        const pieces = tx.objectStore('pieces');
        if (number === 1) await pieces.delete(allOf(hash));
        await pieces.put({ hash, number, count, place, bytes });
        return null;
      }),
    async makeWhole(hash, mediaType) {
      const pieces = await read((tx) => tx.objectStore('pieces').getAll(allOf(hash)));
      const bytes = new Uint8Array(await new Blob(pieces.map((piece) => piece.bytes)).arrayBuffer());
      const isWhole = (await fileHash(bytes)) === hash;
      return tryWrite(session, async (tx) => {
        if (isWhole) await tx.objectStore('files').put({ hash, blob: new Blob([bytes], { type: mediaType }) });
        await tx.objectStore('pieces').delete(allOf(hash));
        return isWhole;
      });
    },
  };
}

async function filesAfter(
  tx: ReadTransaction,
  sequence: number,
): Promise<{ readonly hashes: readonly Hash[]; readonly upTo: number } | null> {
  const { device } = await readHead(tx);
  const behind = IDBKeyRange.bound([device, sequence], [device, Number.POSITIVE_INFINITY], true);
  const raws = await tx.objectStore('entries').index('sequence').getAll(behind, PAGE);
  const last = raws.at(-1);
  if (last === undefined) return null;
  const hashes = known(raws).flatMap((entry) => filesNamedIn(entry).map(({ hash }) => hashSchema.parse(hash)));
  return { hashes: [...new Set(hashes)], upTo: last.sequence };
}
