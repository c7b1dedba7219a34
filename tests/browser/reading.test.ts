import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PAGES } from '../../scripts/reader/stored-page.ts';
import type { Page, Popup } from './drivers/browser.ts';
import { type PageServer, servePages } from './drivers/page-server.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { waitUntil } from './drivers/wait-until.ts';
import { openPage, PAGE_WITHOUT_LOT } from './programs/open-page.ts';
import { SALE_VIN, type SalePage, salePage } from './programs/sale-page.ts';
import { readAgain, readByHand, rowsOf, whenRead } from './read-by-hand.ts';

const browser = useBrowser('America/Boise');
const closes = new Date(Math.ceil(Date.now() / 60_000) * 60_000 + 26 * 3_600_000);
let sale: SalePage = { price: 18_400, closes };
/** The same car as another site shows it: it calls the odometer "Cluster", which the reader takes for something else. */
let clocked: SalePage = { price: 18_400, closes, odometerLabel: 'Cluster' };
let server: PageServer;

beforeAll(async () => {
  server = await servePages((name) => {
    if (name === 'lot') return salePage(sale);
    if (name === 'clocked') return salePage(clocked);
    if (name === 'retail') return RETAIL;
    if (name === 'open') return openPage(closes);
    if (name === 'bare') return PAGE_WITHOUT_LOT;
    if (name === 'hostile') return salePage({ ...sale, extra: HOSTILE });
    return /^[\w-]+$/.test(name) ? storedPage(name) : null;
  });
});
afterAll(() => server.close());

/** A page of the collection, whose lots close on a day that is still to come. */
function storedPage(name: string): string {
  const day = new Date(Date.now() + 3 * 24 * 3_600_000).toLocaleDateString('en-US', {
    timeZone: 'America/Phoenix',
    weekday: 'short',
    month: 'short',
    day: 'numeric',
  });
  return readFileSync(path.join(PAGES, `${name}.html`), 'utf8').replaceAll('Sat, Nov 28', day);
}

describe('a lot', () => {
  test('is read on the click, shown with its sources, and kept with one more', async () => {
    const { page, popup } = await readByHand(browser, server.strange('lot'));
    const rows = await rowsOf(popup);
    expect(rows.VIN).toBe(`${SALE_VIN} | page text, certain`);
    expect(rows['Price now']).toBe('$18,400 | page text, certain');
    expect(rows.Miles).toBe('45,210 | page text, likely');
    expect(rows.Closes).toMatch(/, certain$/);
    await popup.click({ button: 'Watch this lot' });
    await popup.sees('Added to your list.');
    await popup.close();
    await page.close();
    const list = await browser.open('options-page/index.html#/lots');
    await list.sees('2021 Larkspur Hauler 250');
    await list.close();
  });

  test('is known when it is seen again: what changed is shown, and taken only by a click', async () => {
    sale = { ...sale, price: 19_100 };
    const { page, popup } = await readByHand(browser, server.strange('lot'));
    await popup.sees('This lot is already on your list.');
    await popup.sees('$19,100');
    await popup.click({ button: 'Update one fact' });
    await popup.sees('One fact is new.');
    await popup.click({ button: 'Undo' });
    await popup.sees('Update one fact');
    await popup.close();
    await page.close();
  });
});

describe('pointing', () => {
  test('takes what the user clicks on the page, remembers the place for the site, and reads it there the next time', async () => {
    const { page, popup } = await readByHand(browser, server.strange('clocked', 3));
    expect((await rowsOf(popup)).Miles).toBe('not read | ');
    await pointAtMiles(popup, page);
    await page.clickOver('#clock-reading');
    await page.press('Enter');
    const again = await popupAfterPointing(page);
    await again.sees('Remembered for 127.0.0.3: “Cluster”.');
    expect((await rowsOf(again)).Miles).toBe('45,210 | from the place you pointed at, likely');
    expect(await page.count('[popover]')).toBe(0);
    await again.close();
    await page.reload();
    const next = await readAgain(browser, page);
    expect((await rowsOf(next)).Miles).toBe('45,210 | from the place you pointed at, likely');
    await next.close();
    clocked = { ...clocked, odometerLabel: 'Hours' };
    await page.reload();
    const changed = await readAgain(browser, page);
    await changed.sees('was called "Cluster" and is now called "Hours". Nothing was read from it; point again.');
    expect((await rowsOf(changed)).Miles).toBe('not read | ');
    await changed.close();
    await page.close();
  });

  test('does without a mouse: arrow keys go from text to text, Enter takes, and Stop is a button of its own', async () => {
    clocked = { ...clocked, odometerLabel: 'Cluster' };
    const { page, popup } = await readByHand(browser, server.strange('clocked', 5));
    await pointAtMiles(popup, page);
    await page.press('Tab');
    await page.press('Enter');
    await page.until(() => document.querySelector('[popover]') === null);
    await pointAtMiles(await popupAfterPointing(page), page);
    // From the heading, text by text, to the reading of the clock.
    const steps = await page.run(() => {
      const texts = [...document.querySelectorAll('body *')].filter((element) =>
        [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim() !== ''),
      );
      const at = (selector: string) => texts.findIndex((element) => element.matches(selector));
      return at('#clock-reading') - at('h1') + 1;
    });
    for (let at = 0; at < steps; at++) await page.press('ArrowRight');
    await page.press('Enter');
    await page.press('Enter');
    const again = await popupAfterPointing(page);
    expect((await rowsOf(again)).Miles).toBe('45,210 | from the place you pointed at, likely');
    await again.close();
    await page.close();
  });
});

test('what a page leaves open is asked above everything else, and beside the button to watch; a page without a lot offers to point', async () => {
  const { page, popup } = await readByHand(browser, server.strange('open', 4));
  await popup.sees('The page leaves this open');
  await popup.sees('Open questions: Price now, Closes. If you don’t answer, Price now will be left empty.');
  expect(await popup.run(() => document.querySelector('.draft-asked')?.querySelectorAll('details[open]').length)).toBe(
    2,
  );
  await popup.run(() => document.querySelector<HTMLButtonElement>('.draft-choice')?.click());
  await popup.run(() =>
    [...document.querySelectorAll('button')].find(({ textContent }) => textContent?.startsWith('ET: '))?.click(),
  );
  await popup.until(() => document.querySelector('.still-open') === null);
  expect(await popup.run(() => document.activeElement?.closest('.draft-asked') !== null)).toBe(true);
  await popup.close();
  await page.go(server.strange('bare', 4));
  const none = await readAgain(browser, page);
  await none.sees('No lot was found on this page.');
  await none.sees('Point at it');
  await none.close();
  await page.close();
});

/** What opens by itself when the user has pointed or stopped. An older Firefox does that for nobody: there he is asked to press the button. */
async function popupAfterPointing(page: Page): Promise<Popup> {
  const popup = await browser.openedPopup(3_000).catch(() => browser.clickToolbarButton(page));
  await whenRead(popup);
  return popup;
}

/** Presses "Point at …" in the popup, and waits until the page asks where. */
async function pointAtMiles(popup: Popup, page: Page): Promise<void> {
  await popup.run(() => {
    const rows = [...document.querySelectorAll<HTMLDetailsElement>('details.draft-row')];
    const miles = rows.find((row) => row.querySelector('.draft-label')?.textContent === 'Miles');
    const button = [...(miles?.querySelectorAll('button') ?? [])].find((one) => /^Point at/.test(one.textContent));
    setTimeout(() => button?.click(), 0);
  });
  await waitUntil('the popup to leave the page free', async () => !(await popup.isOpen()));
  await page.until(() => document.querySelector('[popover]'));
}

test('a list of lots is offered as a checklist: those ticked are watched in one go, and taken back in one', async () => {
  const { page, popup } = await readByHand(browser, server.strange('11-list-cards', 4));
  await popup.sees('3 lots on this page');
  await popup.click({ button: 'Check all' });
  await popup.click({ button: 'Watch 3 lots' });
  await popup.until(() => document.querySelectorAll('.checklist input:disabled').length === 3);
  await popup.close();
  const list = await browser.open('options-page/index.html#/lots');
  await list.sees('2018 Bramble Satchel 2500');
  const back = await readAgain(browser, page);
  await back.until(() => document.querySelectorAll('.checklist input:disabled').length === 3);
  await back.close();
  await list.close();
  await page.close();
});

test('on a site that the user allowed, opening the page of a watched lot brings its price up to date, and says so', async () => {
  const { page, popup } = await readByHand(browser, server.allowed('lot'));
  await popup.sees('This car was watched before, in another sale.');
  await popup.click({ button: 'Watch this lot' });
  await popup.sees('Added to your list.');
  const button = () =>
    browser.ask(async (start) => {
      const tabId = (await chrome.tabs.query({})).find(({ url }) => url?.startsWith(start))?.id ?? 0;
      const [text, elsewhere, title] = await Promise.all([
        chrome.action.getBadgeText({ tabId }),
        chrome.action.getBadgeText({}),
        chrome.action.getTitle({ tabId }),
      ]);
      return { text, elsewhere, title, news: new URL(await chrome.action.getPopup({ tabId })).search };
    }, server.allowed('lot'));
  /** Has the page of the lot tell once more that it was opened, and waits until it was read for it. */
  const readOnceMore = async (change: () => void) => {
    await browser.ask(async (start) => {
      const tabId = (await chrome.tabs.query({})).find(({ url }) => url?.startsWith(start))?.id ?? 0;
      await chrome.action.setTitle({ tabId, title: 'not read yet' });
    }, server.allowed('lot'));
    await page.run(change);
    await waitUntil('the page to be read once more', async () => (await button()).title !== 'not read yet');
  };
  const putInAddress = () => history.replaceState(null, '', '/lot?seen');
  // Watched, and without a venue or a retail figure there is no room to tell yet.
  expect((await button()).text).toBe('✓');
  await popup.close();
  sale = { ...sale, price: 20_600 };
  await page.reload();
  const list = await browser.open('options-page/index.html#/lots');
  await list.sees('$20,600');
  await waitUntil('the button to have the news', async () => (await button()).news.includes('entry='));
  await readOnceMore(putInAddress);
  const news = await browser.clickToolbarButton(page);
  await news.sees('$20,600');
  await news.click({ button: 'Undo' });
  await list.until(() => !document.body.textContent.includes('$20,600'));
  await news.close();
  const { news: before } = await button();
  await readOnceMore(putInAddress);
  // The same news: no second entry, which would be named in it, has written the price again.
  expect((await button()).news).toBe(before);
  await readOnceMore(() => {
    document.body.textContent = 'Back to the list.';
    history.pushState(null, '', '/lot?list');
  });
  // What every tab shows, which is not nothing when some lot closes within a day.
  const { text, elsewhere, news: after } = await button();
  expect({ text, news: after }).toEqual({ text: elsewhere, news: '' });
  await list.close();
  await page.close();
});

/** What a dealer asks for a car like the one that is watched. */
const RETAIL = `<!doctype html><html lang="en"><title>Used trucks</title><h1>2021 Larkspur Hauler 250</h1>
<dl><dt>VIN</dt><dd>5ZXA9NB95LC347889</dd><dt>Price</dt><dd>$31,900</dd><dt>Mileage</dt><dd>58,210 miles</dd></dl>`;

test('a car with a price on it becomes a comparable of a watched lot, and is taken back', async () => {
  const { page, popup } = await readByHand(browser, server.strange('retail', 4));
  await popup.click('.page-lot > details > summary');
  const label = await popup.until(
    () => [...document.querySelectorAll('option')].find((one) => one.text.startsWith('2021 Larkspur Hauler 250'))?.text,
  );
  await popup.choose({ field: 'For which lot' }, label);
  await popup.click({ button: 'Add to its comparables' });
  await popup.sees('Added one comparable.');
  const list = async () =>
    browser.ask(
      () =>
        new Promise<unknown[]>((resolve) => {
          const request = indexedDB.open('headroom');
          request.onsuccess = () => {
            const all = request.result.transaction('lots').objectStore('lots').getAll();
            all.onsuccess = () => {
              request.result.close();
              resolve(all.result.flatMap((lot) => lot.facts.comps ?? []));
            };
          };
        }),
    );
  expect(await list()).toMatchObject([{ kind: 'asking', price: 3_190_000, miles: 58_210, year: 2021 }]);
  await popup.click({ button: 'Undo' });
  await popup.sees('Undone.');
  await waitUntil('the comparable to go', async () => (await list()).length === 0);
  await popup.close();
  await page.close();
});

/** Takes away or fakes whatever a page can, makes up clicks, never rests, and hides markup in what is read. */
const HOSTILE = `<p>Seller: &lt;img src=x onerror="document.title='taken'"&gt; Lowland Fleet</p><script>
  Object.defineProperty(window, 'headroomReader', { get: () => ({ read: () => ({ kind: 'one', lots: [] }) }) });
  Array.prototype.map = String.prototype.match = JSON.stringify = Element.prototype.getBoundingClientRect = () => 0;
  Node.prototype.contains = () => true;
  setInterval(() => {
    document.body.append(document.createElement('i'));
    for (const name of ['click', 'keydown', 'pointerdown']) dispatchEvent(new MouseEvent(name, { bubbles: true }));
    document.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
    postMessage({ headroom: 'plan-again', request: {} }, '*');
    try { chrome.runtime.sendMessage({ headroom: 'pointing-done', request: {} }); } catch {}
  }, 20);
</script>`;

test('a hostile page is read as text: nothing it says runs, nothing it makes up counts, and it cannot hold the reader', async () => {
  const { page, popup } = await readByHand(browser, server.strange('hostile'));
  const rows = await rowsOf(popup);
  expect(rows.VIN).toBe(`${SALE_VIN} | page text, certain`);
  await popup.sees('still changing while it was read');
  expect(await popup.count('img')).toBe(0);
  expect(await popup.run(() => document.title)).not.toBe('taken');
  await popup.click({ button: 'Open its worksheet' });
  await page.close();
});
