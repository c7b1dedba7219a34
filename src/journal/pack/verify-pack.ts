import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { ChainHead } from '../chain-head.ts';
import { entryHash, hashOfText, sealedHash } from '../entry-hash.ts';
import { type Envelope, firstIssue } from '../read-entry.ts';
import { type OpenedPack, openPack, PACK_TAIL } from './open-pack.ts';
import { type PackHead, type PackLine, packHeadSchema, packLineSchema, packSealSchema } from './pack-format.ts';

/** What a look at a pack found. */
export interface PackCheck {
  readonly head: PackHead;
  /** Entries shown whole, held back with a hash that can be made again, and held back on trust. */
  readonly counts: { readonly entry: number; readonly held: number; readonly bare: number; readonly file: number };
  /** The entries that are shown whole, as the data have them: the page above them could say something else. */
  readonly entries: readonly Envelope[];
  /** A sentence for everything that is wrong; empty when nothing is. */
  readonly findings: readonly string[];
}

/**
 * Checks a pack by itself, and against heads that were noted elsewhere when they are given.
 * @param html the page as a text
 * @param noted for example from an older backup, or from a mail that was sent at the time
 * @param decode base 64 to bytes, null for what is none
 */
export function verifyPack(
  html: string,
  decode: (base64: string) => Uint8Array | null,
  noted: readonly ChainHead[] = [],
): Outcome<PackCheck> {
  const opened = openPack(html);
  if (!opened.ok) return opened;
  const { lines, page, after, files } = opened.value;
  const head = packHeadSchema.safeParse(parsed(lines[0]));
  if (!head.success) return refuse('bad-head', `The first line of the data is damaged (${firstIssue(head.error)}).`);
  const findings: string[] = [];
  const read: PackLine[] = [];
  for (const [i, line] of lines.slice(1, -1).entries()) {
    const one = packLineSchema.safeParse(parsed(line));
    if (one.success) read.push(one.data);
    else findings.push(`Line ${i + 2} of the data can’t be read.`);
  }
  if (after !== PACK_TAIL) findings.push('Something was added to the file after the data, or its end was changed.');
  findings.push(...checkSeal(lines, page), ...checkChains(read, head.data, noted), ...checkFiles(read, files, decode));
  const count = (kind: string): number => read.filter((line) => kind in line).length;
  const counts = { entry: count('entry'), held: count('held'), bare: count('bare'), file: count('file') };
  const entries = read.flatMap((line) => ('entry' in line ? line.entry : []));
  return ok({ head: head.data, counts, entries, findings });
}

function checkSeal(lines: readonly string[], page: string): string[] {
  const seal = packSealSchema.safeParse(parsed(lines.at(-1)));
  if (!seal.success) return ['The seal at the end of the data is missing: the file is cut short, or was changed.'];
  const data = lines
    .slice(0, -1)
    .map((line) => `${line}\n`)
    .join('');
  return [
    ...(hashOfText(data) === seal.data.seal.data ? [] : ['The data was changed after it was sealed.']),
    ...(hashOfText(page) === seal.data.seal.page
      ? []
      : ['The readable part of the page was changed after it was sealed.']),
  ];
}

interface Link {
  readonly id: string;
  readonly device: string;
  readonly sequence: number;
  readonly previous: string;
  readonly hash: string;
  /** The hash made again from what is shown; null where it can't be. */
  readonly again: string | null;
}

function linksOf(lines: readonly PackLine[]): Link[] {
  return lines.flatMap((line): Link[] => {
    if ('entry' in line) return [{ ...line.entry, again: entryHash(line.entry) }];
    if ('held' in line) return [{ ...line.held, again: sealedHash(line.held, line.held.content) }];
    return 'bare' in line ? [{ ...line.bare, again: null }] : [];
  });
}

function checkChains(lines: readonly PackLine[], head: PackHead, noted: readonly ChainHead[]): string[] {
  const links = linksOf(lines);
  const findings: string[] = [];
  const last = new Map<string, Link>();
  let lastId = '';
  for (const link of links) {
    const name = `Entry number ${link.sequence} of device ${link.device}`;
    if (link.again !== null && link.again !== link.hash) findings.push(`${name} was changed after it was written.`);
    if (link.id <= lastId) findings.push(`${name} is out of order.`);
    lastId = link.id;
    const before = last.get(link.device);
    if (before !== undefined && link.sequence !== before.sequence + 1)
      findings.push(`${name} follows number ${before.sequence}: something between is missing, or was inserted.`);
    else if (before !== undefined && link.previous !== before.hash)
      findings.push(`${name} does not follow number ${before.sequence}: one of them was replaced.`);
    last.set(link.device, link);
  }
  for (const { device, sequence, hash } of head.heads) {
    const end = last.get(device);
    if (end?.sequence !== sequence || end.hash !== hash)
      findings.push(
        `The chain of device ${device} does not end with entry number ${sequence}, as the first line says.`,
      );
  }
  for (const device of last.keys())
    if (!head.heads.some((one) => one.device === device))
      findings.push(`Device ${device} is not named in the first line.`);
  return [...findings, ...checkSubjects(lines, head), ...noted.flatMap((one) => checkNoted(one, links))];
}

function checkSubjects(lines: readonly PackLine[], { lot }: PackHead): string[] {
  return lines.flatMap((line) => {
    if (!('entry' in line) || line.entry.subject === `lot:${lot}` || brings(line.entry.happening, lot)) return [];
    return [`Entry number ${line.entry.sequence} of device ${line.entry.device} is not about this lot.`];
  });
}

function brings(happening: Readonly<Record<string, unknown>>, lot: string): boolean {
  const { lots } = happening;
  return Array.isArray(lots) && lots.some((one: { readonly id?: unknown } | null) => one?.id === lot);
}

function checkNoted({ device, sequence, hash }: ChainHead, links: readonly Link[]): string[] {
  const there = links.find((link) => link.device === device && link.sequence === sequence);
  if (there === undefined)
    return [
      `The noted entry number ${sequence} of device ${device} is not in this pack: its chain was cut short, or begins later.`,
    ];
  return there.hash === hash
    ? []
    : [`Entry number ${sequence} of device ${device} is not the one you noted: the chain was rewritten.`];
}

function checkFiles(
  lines: readonly PackLine[],
  inPage: OpenedPack['files'],
  decode: (base64: string) => Uint8Array | null,
): string[] {
  const findings: string[] = [];
  const named = new Set<string>();
  const kept = new Set(lines.flatMap((line) => ('entry' in line ? hashesIn(line.entry.happening) : [])));
  for (const line of lines) {
    if (!('file' in line)) continue;
    const { hash, name, sizeBytes } = line.file;
    named.add(hash);
    if (!kept.has(hash)) findings.push(`No entry in this pack lists the file ${name}.`);
    const bytes = decode(inPage.get(hash) ?? '');
    if (!inPage.has(hash)) findings.push(`The file ${name} is not in the page.`);
    else if (bytes === null || bytes.length !== sizeBytes || bytesToHex(sha256(bytes)) !== hash)
      findings.push(`The file ${name} has changed since it was saved.`);
  }
  for (const hash of inPage.keys())
    if (!named.has(hash)) findings.push('The page holds a file that the data does not list.');
  return findings;
}

function hashesIn(happening: Readonly<Record<string, unknown>>): string[] {
  const attachment = happening.attachment as { readonly hash?: unknown } | undefined;
  return typeof attachment?.hash === 'string' ? [attachment.hash] : [];
}

/** The JSON value of a line, or undefined, which JSON has no word for. */
function parsed(line: string | undefined): unknown {
  try {
    return JSON.parse(line ?? '');
  } catch {
    return undefined;
  }
}
