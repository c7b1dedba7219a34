import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { asRead, expectedPage, PAGES, type PlainPage, pageNames, plainPage } from '../../scripts/reader-scores.ts';
import { draftLotsSchema } from '../../src/capture/draft-lot.ts';
import type { PageReader } from '../../src/capture/page-reader.ts';
import { type PageServer, servePages } from './drivers/page-server.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');
/** Tabs that are open at once: each mostly waits for its page to come to rest. */
const AT_ONCE = 32;
let server: PageServer;

beforeAll(async () => {
  server = await servePages((name) =>
    /^[\w-]+$/.test(name) ? readFileSync(path.join(PAGES, `${name}.html`), 'utf8') : null,
  );
});
afterAll(() => server.close());

interface Wish {
  readonly url: string;
  readonly context: object;
}

/** Runs in the extension: opens pages behind the one in front, and has each read by the reader as it ships. */
async function readAll(wishes: readonly Wish[]): Promise<unknown[]> {
  return Promise.all(
    wishes.map(async ({ url, context }) => {
      const { id: tab = 0 } = await chrome.tabs.create({ url, active: false });
      while (
        (await chrome.tabs.get(tab)).status !== 'complete' ||
        !(await chrome.tabs.get(tab)).url?.startsWith('http')
      )
        await new Promise((resolve) => setTimeout(resolve, 50));
      await chrome.scripting.executeScript({ target: { tabId: tab }, files: ['/injected/reader.js'] });
      const [frame] = await chrome.scripting.executeScript({
        target: { tabId: tab },
        func: (given: unknown) => (globalThis as { headroomReader?: PageReader }).headroomReader?.read(given),
        args: [context],
      });
      await chrome.tabs.remove(tab);
      return frame?.result;
    }),
  );
}

/** What does not depend on the day, or on the host that a page is served from. */
function lasting({ kind, lots, notes = [] }: PlainPage) {
  return {
    kind,
    notes: notes.filter((reason) => reason !== 'still-changing'),
    lots: lots.map(asRead).map(({ close: _, pageUrl: __, unsettled, ...lot }) => {
      const open = Array.isArray(unsettled) ? unsettled.filter((field) => field !== 'close') : [];
      return open.length === 0 ? lot : { ...lot, unsettled: open };
    }),
  };
}

test('every stored page is read in this browser as it is read without one', async () => {
  const names = pageNames(PAGES);
  const read = new Map<string, unknown>();
  for (let at = 0; at < names.length; at += AT_ONCE) {
    const some = names.slice(at, at + AT_ONCE);
    const wishes = some.map((name) => ({
      url: server.allowed(name),
      context: { storeZone: 'America/Boise', ...expectedPage(PAGES, name)?.context },
    }));
    const drafts = await browser.ask(readAll, wishes);
    for (const [i, name] of some.entries()) read.set(name, drafts[i]);
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
