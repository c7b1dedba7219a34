/** Stored pages with what a careful person reads there, and how they are read as the extension reads them. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { JSDOM, VirtualConsole } from 'jsdom';
import type { DraftLots } from '../../src/capture/draft/draft-lot.ts';
import { readPage } from '../../src/capture/read-page.ts';
import { untilFound } from '../../src/capture/watch/until-found.ts';
import { waitUntilQuiet } from '../../src/capture/watch/wait-until-quiet.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { type PlainLot, plainLot } from './plain-lot.ts';

export const PAGES = 'tests/fixtures/pages';
const NOW = '2026-11-27T15:00:00Z';
const STORE_ZONE = 'America/Boise';

/** What a careful person reads on a page, and the circumstances. */
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
  return readHtml(readFileSync(path.join(folder, `${name}.html`), 'utf8'), name, expected);
}

/** The same for a page that is not stored: its first line is its address in a comment. */
export async function readHtml(html: string, name: string, expected: PlainPage | null): Promise<DraftLots> {
  const url = /^<!-- (\S+) -->/.exec(html)?.[1];
  if (url === undefined) throw new Error(`${name} does not begin with its address in a comment`);
  // Scripts run only where a page is built by them; what other pages' scripts say is data.
  const late = expected?.late === true;
  const { window } = new JSDOM(html, {
    url,
    virtualConsole: new VirtualConsole(),
    ...(late ? { runScripts: 'dangerously' } : {}),
  });
  const timers = {
    setTimeout: (call: () => void, ms: number) => window.setTimeout(call, ms),
    clearTimeout: (timer: number) => window.clearTimeout(timer),
  };
  const { venueZone, makes } = expected?.context ?? {};
  const context = {
    storeZone: zone(STORE_ZONE),
    ...(venueZone === undefined ? {} : { venueZone: zone(venueZone) }),
    ...(makes === undefined ? {} : { makes: [...makes] }),
  };
  const now = instant(Date.parse(expected?.now ?? NOW));
  const { draft } = await untilFound(async (rules) => {
    if (late) await waitUntilQuiet(window.document, timers, rules);
    return { draft: readPage(window.document, url, now, context) };
  });
  window.close();
  return draft;
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
