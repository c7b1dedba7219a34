import { HOUR } from '../../domain/time/units.ts';
import { checkNoted, linksByDevice, type NotedFound } from '../../journal/check-noted.ts';
import { checkSignatures, type SignerFound } from '../../journal/check-signatures.ts';
import type { Noted } from '../../journal/noted.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import { checkStamps, type StampSeen } from '../../journal/stamp/check-stamps.ts';
import type { ChainLink } from '../../journal/verify-chain.ts';
import { BACKUP_VERSION, type BackupHeader } from './backup-format.ts';
import type { NamedEntries } from './named-entries.ts';
import type { NamedFiles } from './named-files.ts';
import type { FilesReading } from './read-files.ts';

/** What a look at a backup shows beyond its chains. */
export interface BackupProof {
  /** A sentence for everything else that is wrong, a noted fingerprint that does not fit among it. */
  readonly faults: readonly string[];
  /** A sentence for everything that it has to own up to. */
  readonly told: readonly string[];
  readonly noted: readonly NotedFound[];
  readonly signers: ReadonlyMap<string, SignerFound>;
  readonly stamps: readonly StampSeen[];
}

interface ReadBackup {
  readonly header: BackupHeader;
  readonly entries: readonly Envelope[];
  readonly unknown: number;
  readonly links: readonly ChainLink[];
  readonly files: FilesReading;
  readonly named: NamedFiles;
  readonly mentions: NamedEntries;
  readonly noted: Noted;
}

/**
 * Holds a backup that is whole as a file against what it says of itself, and against what was noted elsewhere.
 * @param rest called between the steps, each of which goes over all entries: the page draws and answers meanwhile
 */
export async function checkBackup(read: ReadBackup, rest: () => Promise<void>): Promise<BackupProof> {
  const { header, entries, unknown, links, files, named, mentions, noted } = read;
  const byDevice = linksByDevice([...links].sort((a, b) => a.sequence - b.sequence));
  await rest();
  const heads = noted.heads.map((one) => checkNoted(one, byDevice.get(one.device)));
  const signatures = await checkSignatures(header.heads, noted.keys);
  const hashes = new Map(links.map(({ device, sequence, hash }) => [`${device} ${sequence}`, hash]));
  const stamps = await checkStamps('stamps' in header ? (header.stamps ?? []) : [], (device, sequence) =>
    hashes.get(`${device} ${sequence}`),
  );
  const lots = mentions.lotsThatCount();
  await rest();
  const differing = named.heldAgainst(files.files);
  await rest();
  const missing = mentions.missing(new Set(entries.map(({ id }) => id)));
  await rest();
  return {
    faults: [
      ...(unknown > 0 ? [] : checkLots(lots, header)),
      ...signatures.findings,
      ...stamps.findings,
      ...heads.flatMap(({ as, message }) => (as === 'broken' ? message : [])),
    ],
    told: [
      ...(header.version === BACKUP_VERSION ? [] : ['An earlier Headroom wrote this backup. It could not sign one.']),
      ...(entries.length === 0 ? ['This backup holds no entry at all.'] : []),
      ...differing,
      ...checkCount(header, files.files.size),
      ...missing,
      ...checkTimes(entries, header),
      ...(unknown > 0
        ? [`A newer Headroom wrote ${unknown} of its entries: they are taken along, and not read here.`]
        : []),
      ...(header.version === BACKUP_VERSION ? [...signatures.told, ...stamps.told] : []),
      ...heads.flatMap(({ as, message }) => (as === 'not there' ? message : [])),
    ],
    noted: heads,
    signers: signatures.signers,
    stamps: stamps.stamps,
  };
}

function checkLots(lots: number, { counts }: BackupHeader): string[] {
  return lots === counts.lots
    ? []
    : [`Its first line counts ${counts.lots} lots, but its entries bring in ${lots}: one of the two was changed.`];
}

function checkCount({ counts }: BackupHeader, there: number): string[] {
  return 'files' in counts && counts.files !== there
    ? [`Its first line counts ${counts.files} attached files, and ${there} came whole.`]
    : [];
}

/** Clocks of two devices differ by minutes; hours are worth a word. */
function checkTimes(entries: readonly Envelope[], { exportedAt }: BackupHeader): string[] {
  const later = entries.filter(({ at }) => at > exportedAt + HOUR);
  const [first] = later;
  return first === undefined
    ? []
    : [
        `By its own time entry number ${first.sequence} of device ${first.device} was written after the backup${later.length > 1 ? `, and so were ${later.length - 1} others` : ''}.`,
      ];
}
