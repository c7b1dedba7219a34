import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as z from 'zod/mini';
import type { LotId } from '../../domain/lot/lot.ts';
import { type Outcome, ok, type Refusal, refuse } from '../../domain/outcome.ts';
import type { Entry } from '../../journal/entry.ts';
import { NOTHING_NOTED, type Noted } from '../../journal/noted.ts';
import { type Envelope, firstIssue, type ReadEntry, readEntry } from '../../journal/read-entry.ts';
import { valueOfLine } from '../../journal/strict-json.ts';
import { type ChainFinding, type ChainLink, checkLinks, linkOf } from '../../journal/verify-chain.ts';
import { type LongWork, Slices } from '../journal/slices.ts';
import { Refused } from '../write/refused.ts';
import {
  BACKUP_FORMAT,
  BACKUP_VERSION,
  type BackupHeader,
  backupEndSchema,
  backupHeaderSchema,
} from './backup-format.ts';
import { type BackupProof, checkBackup } from './check-backup.ts';
import { hashInSlices } from './hash-in-slices.ts';
import { linesOf } from './lines.ts';
import { NamedEntries } from './named-entries.ts';
import { NamedFiles } from './named-files.ts';
import { FilesReading } from './read-files.ts';

/** A backup that was read whole and found complete. */
export interface Backup extends BackupProof {
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
  | 'respelled'
  | 'altered'
  | 'lot-twice'
  | 'stopped';

const anyHeaderSchema = z.looseObject({ format: z.literal(BACKUP_FORMAT), version: z.number() });

/**
 * Reads a backup file to its end and checks all of it. Touches nothing. Each refusal says which line, where one is at fault.
 * @param pause lets the page draw and answer, where one waits
 * @param noted fingerprints and keys from elsewhere, to hold it against before anything is restored
 */
export async function readBackup(
  file: Blob,
  noted: Noted = NOTHING_NOTED,
  { pause = noPause, ...work }: LongWork & { readonly pause?: () => Promise<void> } = {},
): Promise<Outcome<Backup, Refusal & { readonly reason: BackupReason }>> {
  if (file.size === 0) return refuse('empty', 'This file is empty.');
  const slices = new Slices({ ...work, total: file.size, stepAside: pause });
  const reading = new Reading(slices);
  try {
    for await (const line of linesOf(file)) {
      const refusal = await reading.take(line);
      if (refusal !== null) return { ok: false, ...refusal };
      if (slices.took(line.length + 1)) await slices.turn();
    }
    return await reading.finish(noted);
  } catch (error) {
    if (error instanceof Refused) return refuse('stopped', error.message);
    throw error;
  }
}

const noPause = async () => undefined;

type BackupRefusal = Refusal & { readonly reason: BackupReason };

/** A backup as far as it has been read. One line is held back, because only the end tells which line is the last. */
class Reading {
  private readonly slices: Slices;
  private number = 0;
  private held: string | null = null;
  private header: BackupHeader | null = null;
  private unknown = 0;
  /** The first line that is not the text that Headroom writes. */
  private respelled: number | null = null;
  private readonly hash = sha256.create();
  private readonly entries: Envelope[] = [];
  private readonly links: ChainLink[] = [];
  private readonly births = new Set<LotId>();
  private readonly named = new NamedFiles();
  private readonly mentions = new NamedEntries();
  private readonly files = new FilesReading();

  constructor(slices: Slices) {
    this.slices = slices;
  }

  async take(line: string): Promise<BackupRefusal | null> {
    const refusal = this.held === null ? null : await this.takeHeld(this.held);
    this.held = line;
    return refusal;
  }

  private async takeHeld(line: string): Promise<BackupRefusal | null> {
    this.number += 1;
    await hashInSlices(this.hash, utf8ToBytes(`${line}\n`), this.slices);
    const read = valueOfLine(line);
    if (!read.ok && read.reason === 'respelled') this.respelled ??= this.number;
    const value = read.ok ? read.value : read.reason === 'respelled' ? parsed(line) : undefined;
    if (this.header === null)
      return !read.ok && read.reason === 'too-deep'
        ? no('bad-header', 'The first line of this backup is damaged.')
        : this.takeHeader(parsed(line));
    const { version, counts } = this.header;
    if (version !== 1 && this.entries.length >= counts.entries)
      return (await this.files.take(value, this.slices)) ? null : this.badFile();
    if (value !== undefined) return this.takeEntry(value);
    return !read.ok && read.reason === 'too-deep'
      ? no('bad-entry', `Line ${this.number} of this backup is not an entry of the journal (nested too deep).`)
      : no('bad-json', `Line ${this.number} of this backup is damaged: it is not JSON. Use another backup.`);
  }

  private takeHeader(value: unknown): BackupRefusal | null {
    const any = anyHeaderSchema.safeParse(value);
    if (!any.success) return no('not-a-backup', 'This file is not a backup of Headroom.');
    if (any.data.version > BACKUP_VERSION)
      return no('newer-version', 'A newer Headroom wrote this backup. Update Headroom, then restore it.');
    const header = backupHeaderSchema.safeParse(any.data);
    if (!header.success)
      return no('bad-header', `The first line of this backup is damaged (${firstIssue(header.error)}).`);
    this.header = header.data;
    return null;
  }

  private takeEntry(raw: unknown): BackupRefusal | null {
    const read = readEntry(raw);
    if (read.as === 'unreadable')
      return no('bad-entry', `Line ${this.number} of this backup is not an entry of the journal (${read.message}).`);
    if (read.as === 'unknown') this.unknown += 1;
    else this.note(read.entry);
    this.entries.push(read.raw);
    this.links.push(linkOf(read.raw));
    return this.countBirths(read);
  }

  private note(entry: Entry): void {
    this.named.add(entry);
    this.mentions.add(entry);
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

  async finish(noted: Noted): Promise<Outcome<Backup, BackupRefusal>> {
    const last = this.held ?? '';
    if (this.header === null) {
      const begun = last.startsWith(`{"format":"${BACKUP_FORMAT}"`);
      return begun
        ? refuse('truncated', this.cutSentence())
        : refuse('not-a-backup', 'This file is not a backup of Headroom.');
    }
    if (!valueOfLine(last).ok) this.respelled ??= this.number + 1;
    const end = backupEndSchema.safeParse(parsed(last));
    if (!end.success) {
      // Where the last line is whole, it was an entry as well.
      await this.takeHeld(last);
      return refuse('truncated', this.cutSentence());
    }
    if (!this.files.close()) return { ok: false, ...this.badFile() };
    await this.slices.turn();
    const findings = checkLinks(this.links);
    await this.slices.turn();
    if (end.data.sha256 !== bytesToHex(this.hash.digest()) || this.entries.length !== this.header.counts.entries)
      return refuse('altered', alteredSentence(findings));
    if (!endsAs(this.header, this.links))
      return refuse(
        'altered',
        'This file is not as Headroom wrote it: its entries do not end where its first line says. Use another backup.',
      );
    if (this.respelled !== null)
      return refuse(
        'respelled',
        `Line ${this.respelled} of this backup is not spelled as Headroom writes it, so two readers could see two things in it. Use another backup.`,
      );
    const { header, entries, unknown, births, files, named, mentions } = this;
    const read = { header, entries, unknown, links: this.links, files, named, mentions, noted };
    const proof = await checkBackup(read, () => this.slices.turn());
    return ok({ header, entries, unknown, births, files: files.files, named: named.hashes, findings, ...proof });
  }

  /** Says what is missing in the part that was hit: a cut inside the pictures is not one in the entries. */
  private cutSentence(): string {
    const { header, entries, files } = this;
    const again = 'A copy or a download may have stopped early. Copy it again, or use another.';
    if (header === null || entries.length < header.counts.entries) {
      const of = header === null ? '' : ` of ${header.counts.entries}`;
      return `This backup is cut off after ${entries.length}${of} entries. ${again}`;
    }
    const there = files.files.size.toLocaleString('en-US');
    const whole = 'files' in header.counts ? `${there} of ${header.counts.files.toLocaleString('en-US')}` : there;
    return `This backup is cut off behind its ${entries.length} entries, which are all there: of the attached files (pictures and papers) ${whole} came whole. ${again}`;
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
  return found.size === heads.length;
}

function alteredSentence(findings: readonly ChainFinding[]): string {
  const where = findings[0] === undefined ? '' : ` ${findings[0].message}`;
  return `This file is not as Headroom wrote it: its checksum does not match.${where} Use another backup.`;
}

function no(reason: BackupReason, message: string): BackupRefusal {
  return { reason, message };
}

/** The JSON value of a line, or undefined, which JSON has no word for. A text editor may have put a byte order mark first. */
function parsed(line: string): unknown {
  try {
    return JSON.parse(line.replace(/^\uFEFF/, ''));
  } catch {
    return undefined;
  }
}
