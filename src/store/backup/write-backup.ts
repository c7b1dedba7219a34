import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { headsOf } from '../about.ts';
import { eachEntry } from '../each-entry.ts';
import type { Session } from '../session.ts';
import { BACKUP_FORMAT, BACKUP_VERSION, type BackupHeader } from './backup-format.ts';

/** A backup, ready to be saved as a file. */
export interface BackupFile {
  readonly blob: Blob;
  readonly header: BackupHeader;
}

/** Bytes that are gathered before they are handed to the browser, which may put them on the disk. */
const CHUNK = 1_000_000;

/** Writes the whole journal out, as it stood at one moment. */
export function writeBackup(session: Session): Promise<BackupFile> {
  return session.connection.read(async (tx) => {
    const header: BackupHeader = {
      format: BACKUP_FORMAT,
      version: BACKUP_VERSION,
      exportedAt: session.now(),
      counts: { entries: await tx.objectStore('entries').count(), lots: await tx.objectStore('lots').count() },
      heads: await headsOf(tx),
    };
    const file = hashedLines();
    file.add(JSON.stringify(header));
    await eachEntry(tx, (raw) => file.add(JSON.stringify(raw)));
    return { blob: file.end(), header };
  });
}

function hashedLines(): { add(line: string): void; end(): Blob } {
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
