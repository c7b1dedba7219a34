import { afterAll, beforeAll, expect, test } from 'vitest';
import { type PageServer, servePages } from './drivers/page-server.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { waitUntil } from './drivers/wait-until.ts';
import { SALE_VIN, salePage } from './programs/sale-page.ts';
import { readByHand } from './read-by-hand.ts';

const browser = useBrowser('America/Boise');
const closes = new Date(Math.ceil(Date.now() / 60_000) * 60_000 + 26 * 3_600_000);
let price = 19_100;
let server: PageServer;

beforeAll(async () => {
  server = await servePages((name) => {
    if (name === 'lot') return salePage({ price, closes });
    return name === 'program' ? programPage(closes) : null;
  });
});
afterAll(() => server.close());

/** A site whose one page shows one lot after the other: the VIN comes at once, the price late, the close never. */
function programPage(end: Date): string {
  return `<!doctype html><html lang="en"><title>Program</title><h1>2020 Tamarack Stockman</h1>
<dl><dt>VIN</dt><dd id="vin">7YTG5DC01KB655830</dd><dt>Current bid</dt><dd id="bid">$20,750</dd>
<dt>Bidding ends</dt><dd>${new Date(end.getTime() + 3_600_000).toISOString()}</dd></dl><script>
  addEventListener('next', () => {
    history.pushState(null, '', '/program?lot=2');
    document.getElementById('vin').textContent = '${SALE_VIN}';
    setTimeout(() => { document.getElementById('bid').textContent = '$20,800'; }, 700);
  });
</script></html>`;
}

/** What the button says of the tab whose address begins so. */
const titleOf = (address: string) =>
  browser.ask(async (start) => {
    const tabId = (await chrome.tabs.query({})).find(({ url }) => url?.startsWith(start))?.id ?? 0;
    return chrome.action.getTitle({ tabId });
  }, address);

test('a lot never gets the figures of the one that the same page showed before', async () => {
  const { page: first, popup } = await readByHand(browser, server.allowed('lot'));
  await popup.click({ button: 'Watch this lot' });
  await popup.sees('Added to your list.');
  await popup.close();
  await first.close();
  const page = await browser.open(server.allowed('program'));
  // Longer than the page is read for as it was opened.
  await new Promise((resolve) => setTimeout(resolve, 4000));
  await page.run(() => dispatchEvent(new Event('next')));
  const address = server.allowed('program');
  await waitUntil('the button to know the lot', async () => (await titleOf(address)).includes('on your list'));
  const list = await browser.open('options-page/index.html#/lots');
  await list.sees('$19,100');
  expect(await list.run(() => /\$20,750|\$20,800/.test(document.body.textContent))).toBe(false);
  await list.close();
  await page.close();
});

test('a bid that falls is asked about, taken with one press and taken back with another', async () => {
  price = 18_000;
  const page = await browser.open(server.allowed('lot'));
  const address = server.allowed('lot');
  await waitUntil('the button to ask', async () => (await titleOf(address)).includes('something to check'));
  const popup = await browser.clickToolbarButton(page);
  await popup.sees('Bids only rise, so one of the two is wrong.');
  await popup.click({ button: 'Use $18,000' });
  await popup.sees('taken from this page');
  await popup.close();
  const list = await browser.open('options-page/index.html#/lots');
  await list.sees('$18,000');
  await list.close();
  await page.close();
});
