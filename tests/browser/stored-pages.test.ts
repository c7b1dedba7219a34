import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { asRead } from '../../scripts/reader/plain-lot.ts';
import { expectedPage, PAGES, type PlainPage, pageNames, plainPage } from '../../scripts/reader/stored-page.ts';
import { draftLotsSchema } from '../../src/capture/draft/draft-lot.ts';
import type { PageReader } from '../../src/capture/page-reader.ts';
import { type PageServer, servePages } from './drivers/page-server.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');
/** Pages that are open at once: each mostly waits until it has come to rest. */
const AT_ONCE = 34;
let server: PageServer;

beforeAll(async () => {
  server = await servePages((name) => {
    if (name.startsWith(SHELF)) return shelf(name.slice(SHELF.length).split(','));
    return /^[\w-]+$/.test(name) ? readFileSync(path.join(PAGES, `${name}.html`), 'utf8') : null;
  });
});
afterAll(() => server.close());

const SHELF = 'shelf/';
/** Many pages in one, each in a window of its own that is as large as a screen: a tab for each takes much longer. */
function shelf(names: readonly string[]): string {
  const frames = names.map((name) => `<iframe src="/${name}" width="1280" height="800"></iframe>`);
  return `<!doctype html><title>Stored pages</title>${frames.join('')}`;
}

/** Runs in the extension: has each page of the shelf that is in front read by the reader as it ships. */
async function readAll(url: string, contexts: Readonly<Record<string, object>>): Promise<Record<string, unknown>> {
  const { id: tabId = 0 } = (await chrome.tabs.query({})).find((tab) => tab.url?.startsWith(url)) ?? {};
  const target = { tabId, allFrames: true };
  await chrome.scripting.executeScript({ target, files: ['/injected/reader.js'] });
  const frames = await chrome.scripting.executeScript({
    target,
    func: async (given: Readonly<Record<string, object>>) => {
      const name = location.pathname.slice(1);
      const context = parent === top && parent !== self ? given[name] : undefined;
      const reader = (globalThis as { headroomReader?: PageReader }).headroomReader;
      return { name, drafts: context === undefined ? null : await reader?.read(context) };
    },
    args: [contexts],
  });
  type Read = { readonly name: string; readonly drafts: unknown } | null | undefined;
  const results = frames.map(({ result }) => result as Read);
  const read = results.flatMap((result) => (result?.drafts ? [[result.name, result.drafts] as const] : []));
  return Object.fromEntries(read);
}

/** What does not depend on the day, or on the host that a page is served from, whose name speaks for the venue's. */
function lasting({ kind, lots, notes = [] }: PlainPage) {
  return {
    kind,
    notes: notes.filter((reason) => reason !== 'still-changing'),
    lots: lots.map(asRead).map(({ close: _, pageUrl: __, venueName: ___, sale: ____, unsettled, ...lot }) => {
      const open = Array.isArray(unsettled) ? unsettled.filter((field) => !HOSTED.has(String(field))) : [];
      return open.length === 0 ? lot : { ...lot, unsettled: open };
    }),
  };
}

const HOSTED: ReadonlySet<string> = new Set(['close', 'venueName', 'sale']);

test('every stored page is read in this browser as it is read without one', async () => {
  const names = pageNames(PAGES);
  const read = new Map<string, unknown>();
  for (let at = 0; at < names.length; at += AT_ONCE) {
    const some = names.slice(at, at + AT_ONCE);
    const page = await browser.open(server.allowed(SHELF + some.join(',')));
    const contexts = some.map((name) => [name, { storeZone: 'America/Boise', ...expectedPage(PAGES, name)?.context }]);
    const drafts = await browser.ask(readAll, await page.url(), Object.fromEntries(contexts));
    for (const name of some) read.set(name, drafts[name]);
    await page.close();
  }
  const [found, wanted]: [Record<string, unknown>, Record<string, unknown>] = [{}, {}];
  for (const name of names) {
    const expected = expectedPage(PAGES, name);
    if (expected === null) throw new Error(`${name} has no expectation`);
    wanted[name] = lasting(expected);
    found[name] = lasting(plainPage(draftLotsSchema.parse(read.get(name))));
  }
  expect(found).toEqual(wanted);
}, 180_000);
