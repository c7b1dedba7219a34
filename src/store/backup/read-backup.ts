import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as z from 'zod/mini';
import type { LotId } from '../../domain/lot/lot.ts';
import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import { filesNamedIn } from '../../folds/files-named-in.ts';
import { type Envelope, firstIssue, type ReadEntry, readEntry } from '../../journal/read-entry.ts';
import { type ChainFinding, type ChainLink, checkLinks, linkOf } from '../../journal/verify-chain.ts';
import {
  BACKUP_FORMAT,
  BACKUP_VERSION,
  type BackupHeader,
  backupEndSchema,
  backupHeaderSchema,
} from './backup-format.ts';
import { linesOf } from './lines.ts';
import { FilesReading } from './read-files.ts';

/** A backup that was read whole and found complete. */
export interface Backup {
  readonly header: BackupHeader;
  readonly entries: readonly Envelope[];
  /** Entries that a newer Headroom wrote; they are taken along. */
  readonly unknown: number;
  /** Every lot that an entry in it brings in. */
  readonly births: ReadonlySet<LotId>;
  /** The attached files in it, by their SHA-256, each checked against it. */
  readonly files: ReadonlyMap<string, Blob>;
  /** The hashes of every file that its entries name. */
  readonly named: ReadonlySet<string>;
  /** What is wrong with the chains in it, although the file is just as it was written. */
  readonly findings: readonly ChainFinding[];
}

export type BackupReason =
  | 'empty'
  | 'not-a-backup'
  | 'newer-version'
  | 'bad-header'
  | 'truncated'
  | 'bad-json'
  | 'bad-entry'
  | 'bad-file'
  | 'altered'
  | 'lot-twice';

const anyHeaderSchema = z.looseObject({ format: z.literal(BACKUP_FORMAT), version: z.number() });

/** Reads a backup file to its end and checks all of it. Touches nothing. Each refusal says which line, where one is at fault. */
export async function readBackup(file: Blob): Promise<Outcome<Backup, Refusal & { readonly reason: BackupReason }>> {
  if (file.size === 0) return refuse('empty', 'This file is empty.');
  const reading = new Reading();
  for await (const line of linesOf(file)) {
    const refusal = reading.take(line);
    if (refusal !== null) return { ok: false, ...refusal };
  }
  return reading.finish();
}

type BackupRefusal = Refusal & { readonly reason: BackupReason };

/** A backup as far as it has been read. One line is held back, because only the end tells which line is the last. */
class Reading {
  private number = 0;
  private held: string | null = null;
  private header: BackupHeader | null = null;
  private unknown = 0;
  private readonly hash = sha256.create();
  private readonly entries: Envelope[] = [];
  private readonly links: ChainLink[] = [];
  private readonly births = new Set<LotId>();
  private readonly named = new Set<string>();
  private readonly files = new FilesReading();

  take(line: string): BackupRefusal | null {
    const refusal = this.held === null ? null : this.takeHeld(this.held);
    this.held = line;
    return refusal;
  }

  private takeHeld(line: string): BackupRefusal | null {
    this.number += 1;
    this.hash.update(utf8ToBytes(`${line}\n`));
    if (this.header === null) return this.takeHeader(line);
    const { version, counts } = this.header;
    return version === 1 || this.entries.length < counts.entries ? this.takeEntry(line) : this.takeFile(line);
  }

  private takeHeader(line: string): BackupRefusal | null {
    const any = anyHeaderSchema.safeParse(parsed(line));
    if (!any.success) return no('not-a-backup', 'This file is not a backup of Headroom.');
    if (any.data.version > BACKUP_VERSION)
      return no('newer-version', 'A newer Headroom wrote this backup. Update Headroom, then restore it.');
    const header = backupHeaderSchema.safeParse(any.data);
    if (!header.success)
      return no('bad-header', `The first line of this backup is damaged (${firstIssue(header.error)}).`);
    this.header = header.data;
    return null;
  }

  private takeEntry(line: string): BackupRefusal | null {
    const raw = parsed(line);
    if (raw === undefined)
      return no('bad-json', `Line ${this.number} of this backup is damaged: it is not JSON. Use another backup.`);
    if (isDeep(raw))
      return no('bad-entry', `Line ${this.number} of this backup is not an entry of the journal (nested too deep).`);
    const read = readEntry(raw);
    if (read.as === 'unreadable')
      return no('bad-entry', `Line ${this.number} of this backup is not an entry of the journal (${read.message}).`);
    if (read.as === 'unknown') this.unknown += 1;
    else for (const { hash } of filesNamedIn(read.entry)) this.named.add(hash);
    this.entries.push(read.raw);
    this.links.push(linkOf(read.raw));
    return this.countBirths(read);
  }

  private takeFile(line: string): BackupRefusal | null {
    return this.files.take(parsed(line)) ? null : this.badFile();
  }

  private badFile(): BackupRefusal {
    return no(
      'bad-file',
      `Line ${this.number} of this backup, or the attached file before it, is damaged. Use another backup.`,
    );
  }

  /** Every lot has one beginning; a second one would make the state depend on which is undone. */
  private countBirths(read: ReadEntry): BackupRefusal | null {
    if (read.as !== 'known' || read.entry.happening.kind !== 'lots-added') return null;
    for (const { id } of read.entry.happening.lots) {
      if (this.births.has(id))
        return no('lot-twice', `Line ${this.number} of this backup adds lot ${id} a second time.`);
      this.births.add(id);
    }
    return null;
  }

  finish(): Outcome<Backup, BackupRefusal> {
    const last = this.held ?? '';
    if (this.header === null) {
      const begun = last.startsWith(`{"format":"${BACKUP_FORMAT}"`);
      return begun ? this.truncated() : refuse('not-a-backup', 'This file is not a backup of Headroom.');
    }
    const end = backupEndSchema.safeParse(parsed(last));
    if (!end.success) return this.truncated();
    if (!this.files.close()) return { ok: false, ...this.badFile() };
    const findings = checkLinks(this.links);
    if (end.data.sha256 !== bytesToHex(this.hash.digest()) || this.entries.length !== this.header.counts.entries)
      return refuse('altered', alteredSentence(findings));
    if (!endsAs(this.header, this.links))
      return refuse(
        'altered',
        'This file is not as Headroom wrote it: its entries do not end where its first line says. Use another backup.',
      );
    const { header, entries, unknown, births, named } = this;
    return ok({ header, entries, unknown, births, files: this.files.files, named, findings });
  }

  private truncated(): Outcome<Backup, BackupRefusal> {
    const of = this.header === null ? '' : ` of ${this.header.counts.entries}`;
    return refuse(
      'truncated',
      `This backup is cut off after ${this.entries.length}${of} entries. A copy or a download may have stopped early. Copy it again, or use another.`,
    );
  }
}

/** Whether each chain ends with the entry that the header names, whatever is wrong in between. */
function endsAs({ heads }: BackupHeader, links: readonly ChainLink[]): boolean {
  const lasts = new Map(heads.map((head) => [head.device, head]));
  const found = new Set<string>();
  for (const { device, sequence, hash } of links) {
    const last = lasts.get(device);
    if (last === undefined || sequence > last.sequence) return false;
    if (sequence === last.sequence && hash === last.hash) found.add(device);
  }
  return found.size === lasts.size;
}

function alteredSentence(findings: readonly ChainFinding[]): string {
  const where = findings[0] === undefined ? '' : ` ${findings[0].message}`;
  return `This file is not as Headroom wrote it: its checksum does not match.${where} Use another backup.`;
}

function no(reason: BackupReason, message: string): BackupRefusal {
  return { reason, message };
}

/** No entry is nested deeper; what is could not be hashed. */
const DEEPEST = 100;

function isDeep(value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) return true;
    level = level.flatMap((one) => (typeof one === 'object' && one !== null ? Object.values(one) : []));
  }
  return false;
}

/** The JSON value of a line, or undefined, which JSON has no word for. A text editor may have put a byte order mark first. */
function parsed(line: string): unknown {
  try {
    return JSON.parse(line.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}
