import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { toBase64 } from '../../journal/base64.ts';
import { hashSchema } from '../../journal/ids.ts';
import { fileHash } from '../attachments/file-hash.ts';
import type { StoredFile } from '../connection/schema.ts';
import { eachEntry } from '../journal/each-entry.ts';
import { readWithSignedHeads } from '../signing/signed-heads.ts';
import { stampsIn } from '../signing/stamps.ts';
import type { Session } from '../write/session.ts';
import { BACKUP_FORMAT, BACKUP_VERSION, type BackupHeader, FILE_PART, type FileHeader } from './backup-format.ts';

/** A backup, ready to be saved as a file. */
export interface BackupFile {
  readonly blob: Blob;
  readonly header: BackupHeader;
  /** Attached files in it. */
  readonly files: number;
  /** Attached files that could not be read as they were written, and were left out: the disk damaged them. */
  readonly damaged: number;
}

/** Bytes that are gathered before they are handed to the browser, which may put them on the disk. */
const CHUNK = 1_000_000;

/**
 * Writes the whole journal out, as it stood at one moment, and the attached files after it. The files are read one at a
 * time once the journal is written: a blob can be read after its transaction, and never changes.
 */
export async function writeBackup(session: Session): Promise<BackupFile> {
  const { header, files, text } = await readWithSignedHeads(session, async (tx, signedHeads) => {
    const text = hashedLines();
    const stamps = await stampsIn(tx);
    const header = {
      format: BACKUP_FORMAT,
      version: BACKUP_VERSION,
      exportedAt: session.now(),
      counts: {
        entries: await tx.objectStore('entries').count(),
        lots: await tx.objectStore('lots').count(),
        files: await tx.objectStore('files').count(),
      },
      heads: [...(await signedHeads(tx))],
      ...(stamps.length > 0 && { stamps: [...stamps] }),
    } as const satisfies BackupHeader;
    text.add(JSON.stringify(header));
    await eachEntry(tx, (raw) => text.add(JSON.stringify(raw)));
    return { header, files: await tx.objectStore('files').getAll(), text };
  });
  let whole = 0;
  for (const file of files) if (await writeFile(text, file)) whole += 1;
  return { blob: text.end(), header, files: whole, damaged: files.length - whole };
}

/** False, and nothing written, when the bytes are not those that were kept. */
async function writeFile(text: HashedLines, { hash, blob }: StoredFile): Promise<boolean> {
  const bytes = await bytesOf(blob);
  if (bytes === null || (await fileHash(bytes)) !== hash) return false;
  const head: FileHeader = {
    file: { hash: hashSchema.parse(hash), sizeBytes: bytes.length, mediaType: blob.type },
  };
  text.add(JSON.stringify(head));
  for (let at = 0; at < bytes.length; at += FILE_PART)
    text.add(`{"bytes":"${toBase64(bytes.subarray(at, at + FILE_PART))}"}`);
  return true;
}

async function bytesOf(blob: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await blob.arrayBuffer());
  } catch {
    // NotReadableError: the file under it is gone from the browser's profile.
    return null;
  }
}

interface HashedLines {
  add(line: string): void;
  end(): Blob;
}

function hashedLines(): HashedLines {
  const hash = sha256.create();
  const parts: Blob[] = [];
  let text = '';

  function flush(): void {
    const bytes = utf8ToBytes(text);
    hash.update(bytes);
    parts.push(new Blob([bytes]));
    text = '';
  }

  return {
    add(line) {
      text += `${line}\n`;
      if (text.length > CHUNK) flush();
    },
    end() {
      flush();
      const last = `${JSON.stringify({ sha256: bytesToHex(hash.digest()) })}\n`;
      return new Blob([...parts, last], { type: 'application/jsonl' });
    },
  };
}
