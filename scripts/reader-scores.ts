/**
 * How well the page reader reads the invented pages under tests/fixtures/pages, field by field. The tests compare page by
 * page with what is worked out here; `scoreTable` prints the sums.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { JSDOM, VirtualConsole } from 'jsdom';
import type { DraftFieldName, DraftLot, DraftLots } from '../src/capture/draft-lot.ts';
import { readPage } from '../src/capture/read-page.ts';
import { waitUntilQuiet } from '../src/capture/wait-until-quiet.ts';
import { instant } from '../src/domain/time/instant.ts';
import { zone } from '../src/domain/time/zone.ts';

export const PAGES = 'tests/fixtures/pages';
const NOW = '2026-11-27T15:00:00Z';
const STORE_ZONE = 'America/Boise';

/**
 * One lot as a careful person reads it: dollars, ISO times, and only the fields that the page gives. `unread` names those
 * of them that the reader is known to leave empty: they count as missed, and a reading of them would be news.
 */
export type PlainLot = Record<string, string | number | readonly string[]>;

export interface PlainPage {
  readonly now?: string;
  readonly context?: { readonly venueZone?: string; readonly makes?: readonly string[] };
  /** The page builds itself by script, and is waited for. */
  readonly late?: boolean;
  readonly kind: DraftLots['kind'];
  readonly lots: readonly PlainLot[];
  readonly notes?: readonly string[];
}

export const pageNames = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.html'))
    .map((file) => file.slice(0, -'.html'.length))
    .sort();

export function expectedPage(folder: string, name: string): PlainPage | null {
  const file = path.join(folder, `${name}.expected.json`);
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as PlainPage) : null;
}

/** Reads a stored page the way the extension would, at the time and with the setup that its expectation names. */
export async function readStoredPage(folder: string, name: string, expected: PlainPage | null): Promise<DraftLots> {
  const html = readFileSync(path.join(folder, `${name}.html`), 'utf8');
  const url = /^<!-- (\S+) -->/.exec(html)?.[1];
  if (url === undefined) throw new Error(`${name}.html does not begin with its address in a comment`);
  // Scripts run only where a page is built by them; what other pages' scripts say is data.
  const late = expected?.late === true;
  const { window } = new JSDOM(html, {
    url,
    virtualConsole: new VirtualConsole(),
    ...(late ? { runScripts: 'dangerously' } : {}),
  });
  if (late) {
    const timers = {
      setTimeout: (call: () => void, ms: number) => window.setTimeout(call, ms),
      clearTimeout: (timer: number) => window.clearTimeout(timer),
    };
    await waitUntilQuiet(window.document, timers, { quietMs: 300, limitMs: 5000 });
  }
  const { venueZone, makes } = expected?.context ?? {};
  const read = readPage(window.document, url, instant(Date.parse(expected?.now ?? NOW)), {
    storeZone: zone(STORE_ZONE),
    ...(venueZone === undefined ? {} : { venueZone: zone(venueZone) }),
    ...(makes === undefined ? {} : { makes: [...makes] }),
  });
  window.close();
  return read;
}

/** A draft in the terms of an expectation. */
export function plainPage(read: DraftLots): PlainPage {
  const notes = read.notes.map((note) => note.reason).sort();
  return {
    kind: read.kind,
    lots: read.lots.map((lot) => plainLot(lot, read)),
    ...(notes.length > 0 ? { notes } : {}),
  };
}

const MONEY: ReadonlySet<string> = new Set(['priceNow', 'nextBid', 'increment', 'buyNow']);

function plainLot(lot: DraftLot, read: DraftLots): PlainLot {
  const plain: PlainLot = {};
  const unsettled: string[] = [];
  for (const name of Object.keys(lot.fields) as DraftFieldName[]) {
    const field = lot.fields[name];
    const value = field?.readings[0]?.value;
    if (field === undefined || value === undefined) continue;
    if (!field.settled) unsettled.push(name);
    else if (typeof value === 'object') plain[name] = new Date(value.instant).toISOString().replace('.000Z', 'Z');
    else plain[name] = MONEY.has(name) ? Number(value) / 100 : value;
  }
  if (unsettled.length > 0) plain.unsettled = unsettled.sort();
  if (read.kind === 'many' && lot.pageUrl !== read.pageUrl) plain.pageUrl = lot.pageUrl;
  return plain;
}

/** A lot without what the reader is known to leave empty. */
export function asRead({ unread, ...lot }: PlainLot): PlainLot {
  const left: readonly unknown[] = Array.isArray(unread) ? unread : [];
  return Object.fromEntries(Object.entries(lot).filter(([field]) => !left.includes(field)));
}

/** Whether two values of a field are the same reading; a countdown is only as fine as a minute. */
export function isSameValue(field: string, expected: unknown, read: unknown): boolean {
  if (field !== 'close') return expected === read;
  return Math.abs(Date.parse(String(expected)) - Date.parse(String(read))) <= 60_000;
}

export interface FieldScore {
  right: number;
  wrong: number;
  missed: number;
  /** Left open although the page gives one value, or the other way round. */
  open: number;
}

/** Counts right, wrong and missed values by field over all pages of a folder. */
export async function scorePages(folder: string): Promise<ReadonlyMap<string, FieldScore>> {
  const scores = new Map<string, FieldScore>();
  const of = (field: string) => {
    const score = scores.get(field) ?? { right: 0, wrong: 0, missed: 0, open: 0 };
    scores.set(field, score);
    return score;
  };
  for (const name of pageNames(folder)) {
    const expected = expectedPage(folder, name);
    if (expected === null) throw new Error(`${name} has no expectation`);
    const read = plainPage(await readStoredPage(folder, name, expected));
    const lots = Math.max(expected.lots.length, read.lots.length);
    for (let at = 0; at < lots; at++) scoreLot(expected.lots[at] ?? {}, read.lots[at] ?? {}, of);
  }
  return scores;
}

function scoreLot(expected: PlainLot, read: PlainLot, of: (field: string) => FieldScore): void {
  const open = (lot: PlainLot) => new Set<string>(Array.isArray(lot.unsettled) ? (lot.unsettled as string[]) : []);
  const [openExpected, openRead] = [open(expected), open(read)];
  const fields = new Set([...Object.keys(expected), ...Object.keys(read), ...openExpected, ...openRead]);
  fields.delete('unsettled');
  fields.delete('unread');
  for (const field of fields) {
    const score = of(field);
    if (openExpected.has(field) && openRead.has(field)) score.right++;
    else if (openRead.has(field)) score.open++;
    else if (read[field] === undefined) score.missed++;
    else if (expected[field] !== undefined && isSameValue(field, expected[field], read[field])) score.right++;
    else score.wrong++;
  }
}

/** The scores as a table in Markdown: precision counts what was read, recall what was there to read. */
export function scoreTable(scores: ReadonlyMap<string, FieldScore>): string {
  const percent = (part: number, whole: number) => (whole === 0 ? '–' : `${Math.round((100 * part) / whole)} %`);
  const rows = [...scores].sort(([a], [b]) => a.localeCompare(b));
  const total: FieldScore = { right: 0, wrong: 0, missed: 0, open: 0 };
  for (const [, score] of rows) for (const key of Object.keys(total) as (keyof FieldScore)[]) total[key] += score[key];
  const line = ([field, { right, wrong, missed, open }]: readonly [string, FieldScore]) =>
    `| ${field} | ${right} | ${wrong} | ${missed} | ${open} | ${percent(right, right + wrong)} | ${percent(right, right + missed + open)} |`;
  return [
    '| field | right | wrong | missed | left open | precision | recall |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
    ...rows.map(line),
    line(['**all**', total]),
  ].join('\n');
}
