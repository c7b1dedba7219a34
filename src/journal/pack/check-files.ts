import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { fromBase64 } from '../base64.ts';
import { rowOf } from '../happening.ts';
import type { NamedFile } from '../happenings/row.ts';
import { type Envelope, readEntry } from '../read-entry.ts';
import type { FileInPage, OpenedPack } from './open-pack.ts';
import type { PackLine } from './pack-format.ts';
import { linkName } from './pack-links.ts';

/** A file of a pack, its bytes held against the hash by which an entry names it. */
export interface PackedFile {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

interface FilesCheck {
  readonly findings: readonly string[];
  readonly told: readonly string[];
  /** Those that are right, by their SHA-256. */
  readonly files: ReadonlyMap<string, PackedFile>;
}

type FileLine = Extract<PackLine, { readonly file: unknown }>['file'];

/** How a file stands in the page that is not a picture: a click saves it and opens nothing. */
const SAVED_ONLY = 'application/octet-stream';

/** Whether the page holds the files that the data name, and the data those that shown entries name. */
export function checkFiles(lines: readonly PackLine[], { files: inPage, filePlaces }: OpenedPack): FilesCheck {
  const entries = lines.flatMap((line) => ('entry' in line ? line.entry : []));
  const listed = lines.flatMap((line) => ('file' in line ? line.file : []));
  const findings: string[] = [];
  const files = new Map<string, PackedFile>();
  const places = new Map(inPage.map((file) => [file.hash, file]));
  if (places.size !== inPage.length || filePlaces !== inPage.length)
    findings.push('The page holds a file twice, or one that is not put in as Headroom does.');
  for (const line of listed) {
    const found = checkOne(line, entries, places.get(line.hash));
    if (typeof found === 'string') findings.push(found);
    else files.set(line.hash, { name: line.name, mediaType: line.mediaType, bytes: found });
  }
  const hashes = new Set(listed.map(({ hash }) => hash));
  if (hashes.size !== listed.length) findings.push('A file is named twice in the data.');
  for (const hash of places.keys())
    if (!hashes.has(hash)) findings.push('The page holds a file that the data does not list.');
  return { findings, told: missing(entries, hashes), files };
}

function checkOne(line: FileLine, entries: readonly Envelope[], there: FileInPage | undefined) {
  const { hash, name, mediaType, sizeBytes } = line;
  const kept = entries.some(({ happening }) => {
    const { attachment } = happening as { readonly attachment?: Partial<FileLine> };
    return (
      attachment?.hash === hash &&
      attachment.name === name &&
      attachment.mediaType === mediaType &&
      attachment.sizeBytes === sizeBytes
    );
  });
  if (!kept) return `No entry in this pack lists the file ${name} as it stands here.`;
  if (there === undefined) return `The file ${name} is not in the page.`;
  if (there.mediaType !== mediaType && there.mediaType !== SAVED_ONLY)
    return `The file ${name} stands in the page as another kind of file.`;
  const bytes = fromBase64(there.base64);
  if (bytes === null || bytes.length !== sizeBytes || bytesToHex(sha256(bytes)) !== hash)
    return `The file ${name} has changed since it was saved.`;
  return bytes;
}

/** Files that shown entries name and that are not listed. */
function missing(entries: readonly Envelope[], listed: ReadonlySet<string>): string[] {
  const told = entries.flatMap((entry) =>
    filesNamedIn(entry)
      .filter(({ hash }) => !listed.has(hash))
      .map(
        ({ hash, name }) => `${linkName(entry)} names a file that is not in this pack: ${name ?? hash.slice(0, 12)}.`,
      ),
  );
  return [...new Set(told)];
}

function filesNamedIn(entry: Envelope): readonly NamedFile[] {
  const read = readEntry(entry);
  return read.as === 'known' ? (rowOf(read.entry.happening).files?.(read.entry.happening) ?? []) : [];
}
