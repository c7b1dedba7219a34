import { HOUR } from '../../domain/time/units.ts';
import { type Envelope, readEntry } from '../read-entry.ts';
import type { PackHead, PackLine } from './pack-format.ts';
import { linkName, numbersOf, type PackLink } from './pack-links.ts';

/** What a look at the entries of the lot itself found. */
interface LotCheck {
  readonly findings: readonly string[];
  /** What a pack that fits has to own up to. */
  readonly told: readonly string[];
}

/** Whether what a pack shows is about its lot, can be read, and is all that the pack should hold of it. */
export function checkLot(lines: readonly PackLine[], links: readonly PackLink[], head: PackHead): LotCheck {
  const entries = lines.flatMap((line) => ('entry' in line ? line.entry : []));
  const own = `lot:${head.lot}`;
  const held = links.filter(({ form, subject }) => form === 'held' && subject === own);
  const births = bornIn(lines, head.lot);
  const findings = entries.flatMap((entry) => checkEntry(entry, births.has(entry.id) || entry.subject === own));
  for (const line of lines)
    if ('batch' in line && !births.has(line.batch.id)) findings.push(`${linkName(line.batch)} is not about this lot.`);
  if (head.version > 1 && 'shows' in head && head.shows === 'everything' && held.length > 0)
    findings.push(`The pack is said to show everything about this lot, but holds back ${numbersOf(held)}.`);
  const told = [
    ...(held.length > 0 ? [`Of this lot, ${numbersOf(held)} ${held.length === 1 ? 'is' : 'are'} held back.`] : []),
    ...checkBirth(births),
    ...(entries.some(({ happening }) => happening.kind === 'result-noted') ? [] : ['No result of this lot is shown.']),
    ...checkNames(entries, links, own),
    ...checkTimes(links, head),
    ...checkNewer(entries),
  ];
  return { findings, told };
}

function checkEntry(entry: Envelope, isOwn: boolean): string[] {
  const read = readEntry(entry);
  return [
    ...(isOwn ? [] : [`${linkName(entry)} is not about this lot.`]),
    ...(read.as === 'unreadable' ? [`${linkName(entry)} is no entry that Headroom writes (${read.message}).`] : []),
  ];
}

/** The ids of the shown entries that brought the lot in. */
function bornIn(lines: readonly PackLine[], lot: string): ReadonlySet<string> {
  const ids = lines.flatMap((line) => {
    if ('batch' in line) return line.batch.row.lot.id === lot ? [line.batch.id] : [];
    if (!('entry' in line) || line.entry.happening.kind !== 'lots-added') return [];
    const { lots } = line.entry.happening;
    return Array.isArray(lots) && lots.some((one: { readonly id?: unknown } | null) => one?.id === lot)
      ? [line.entry.id]
      : [];
  });
  return new Set(ids);
}

function checkBirth(births: ReadonlySet<string>): string[] {
  if (births.size === 0)
    return [
      'The entry that brought this lot in is not shown: it is held back, is among others, or is not in this file.',
    ];
  return births.size === 1 ? [] : [`This lot is brought in ${births.size} times, where once is right.`];
}

/** What shown entries name that is not in the pack, or is about something else. */
function checkNames(entries: readonly Envelope[], links: readonly PackLink[], own: string): string[] {
  const about = new Map(links.map(({ id, subject }) => [id, subject]));
  return entries.flatMap((entry) => {
    const { entry: undone, dispute } = entry.happening;
    const named = entry.happening.kind === 'undone' ? undone : dispute;
    if (typeof named !== 'string') return [];
    if (!about.has(named)) return [`${linkName(entry)} speaks of an entry that is not in this file.`];
    const subject = about.get(named);
    return entry.subject === own && subject !== own && subject !== null
      ? [`${linkName(entry)} speaks of an entry that is filed under something else than this lot.`]
      : [];
  });
}

/** Clocks of two devices differ by minutes; hours are worth a word. */
function checkTimes(links: readonly PackLink[], { madeAt }: PackHead): string[] {
  const later = links.filter(({ at }) => at !== null && at > madeAt + HOUR);
  return later.length === 0 ? [] : [`By its own time ${numbersOf(later)} was written after the pack was made.`];
}

function checkNewer(entries: readonly Envelope[]): string[] {
  const newer = entries.filter((entry) => readEntry(entry).as === 'unknown');
  return newer.length === 0
    ? []
    : [`A newer Headroom wrote ${numbersOf(newer)}: the fingerprint was checked, what it says was not read.`];
}
