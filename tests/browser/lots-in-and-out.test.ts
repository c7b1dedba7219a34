import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Authority } from '../journal/stamp-authority.ts';
import { goTo, openDemo } from './demo.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');

const ROWS = [
  'VIN,Yr,Make,Model,Odo,Run,Where,Ends,High bid,Retail low,Retail,Retail high,Color',
  '1ZL3H4C21M0104471,2021,Larkspur,Hauler Test,"45,210 mi",118,,2027-03-14 02:30 MT,"$8,400",16000,18000,20500,white',
  ',2x21,Larkspur,Parcelman Test,72k,119,,2027-07-03 14:07,3.456,,19000,,red',
  'nothing that names a lot,,,,,,,,,,,,',
].join('\n');

test('pasted rows show every fault first, keep the good ones, and can be undone', async () => {
  const page = await openDemo(browser);
  const before = Number(
    await page.run(() => document.querySelector('.list-count')?.textContent?.split(' of ')[1]?.split(' ')[0]),
  );
  await goTo(page, '#/add');
  await page.fill({ field: 'Rows' }, ROWS);
  await page.click({ button: 'Preview rows' });
  await page.sees('could mean 3,456');
  await page.sees('Nothing here says which lot it is');
  await page.click({ button: 'Add 2 lots' });
  await page.sees('2 lots are on the list.');
  await page.click({ link: 'To the lots' });
  await page.fill({ field: 'Search the lots' }, 'larkspur test');
  await page.sees(`2 of ${before + 2} lots`);
  await goTo(page, '#/add');
  await page.fill({ field: 'Rows' }, ROWS);
  await page.click({ button: 'Preview rows' });
  // The car with a VIN is recognized; the other has nothing to be recognized by.
  await page.sees('Already on your list.');
});

test('a list with an unknown venue asks once, goes on with its bar while another screen is shown, and can be stopped there', async () => {
  const page = await browser.pageAt('options-page/index.html');
  await goTo(page, '#/add');
  await page.click({ button: 'Choose something else' });
  const rows = Array.from(
    { length: 1500 },
    (_, i) => `${i},Thornbury,Sorter ${i},${i < 30 ? 'Lakeside Online' : ''},9000`,
  );
  // Pasted in one go, as a hand does it: typing so much takes a browser minutes.
  await page.until(
    (text) => {
      const box = document.querySelector<HTMLTextAreaElement>('.paste-box');
      if (box === null) return false;
      box.value = text;
      return box.dispatchEvent(new Event('input', { bubbles: true }));
    },
    ['Lot number,Make,Model,Venue,Price now', ...rows, 'Total,,,,36000000'].join('\n'),
  );
  await page.click({ button: 'Preview rows' });
  await page.sees('Lakeside Online, 30 rows');
  await page.sees('1 row of totals is no lot');
  await page.click({ button: 'Add it as a venue' });
  await page.sees('Added the venue Lakeside Online.');
  // The rows are read again with the answer.
  await page.until(() => document.querySelector('.import-question') === null);
  await page.sees('Add 1,500 lots');
  // Pressed by the page itself once the other screen shows the bar: a busy machine may come to it after the end.
  await page.run(() => {
    new MutationObserver(() => {
      const note = location.hash === '#/words' ? document.querySelector('.long-run-note') : null;
      if (note?.querySelector('progress')) note.querySelector('button')?.click();
    }).observe(document.body, { subtree: true, childList: true, attributes: true });
  });
  // Without a word from the test between the press and the other screen: a busy machine would be done by then.
  await page.run(() => {
    const add = [...document.querySelectorAll('button')].find((button) => button.textContent === 'Add 1,500 lots');
    add?.click();
    location.hash = '#/words';
  });
  await page.until(() => document.querySelector('main h1')?.textContent === 'Words');
  await page.until(() => document.querySelector('.long-run-note') === null);
  await goTo(page, '#/add');
  await page.sees('Stopped');
  expect(await page.text('[role="status"]')).toContain('on the list.');
});

test('a backup is restored with a bar while the page goes on being drawn, and tells what changed', async () => {
  const page = await browser.pageAt('options-page/index.html');
  await goTo(page, '#/backup');
  await page.until(() => document.querySelector('main h1')?.textContent === 'Backup');
  const { text } = await page.download(() => page.click({ button: 'Save a backup' }));
  await goTo(page, '#/lots');
  await page.until(() => document.querySelector('.lot-row'));
  await goTo(page, '#/backup');
  await page.until(() => document.querySelector('input[type="file"]'));
  await page.run((file) => {
    const told = document.documentElement.dataset;
    Object.assign(told, { bars: '0' });
    const beat = () => {
      if (document.querySelector('.run-bar progress') !== null) told.bars = String(Number(told.bars) + 1);
      requestAnimationFrame(beat);
    };
    beat();
    const input = document.querySelector<HTMLInputElement>('input[type="file"]');
    const list = new DataTransfer();
    list.items.add(new File([file], 'kept.backup.jsonl'));
    if (input === null) return;
    input.files = list.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  }, text);
  await page.sees('What it would change');
  const button = await page.run(
    () =>
      [...document.querySelectorAll('button')].find((one) => one.textContent?.startsWith('Replace everything'))
        ?.textContent,
  );
  await page.click({ button: button ?? 'Add what is new' });
  await page.sees('is restored.');
  await page.sees('What changed');
  // Frames that were drawn with the bar in them: a restore in one go would leave two or three.
  expect(Number(await page.run(() => document.documentElement.dataset.bars))).toBeGreaterThan(3);
});

test('the list is saved as a file with its max bids, which reads back as the same lots', async () => {
  const page = await browser.pageAt('options-page/index.html');
  await goTo(page, '#/lots');
  await page.click({ button: 'All' });
  await page.fill({ field: 'Search the lots' }, 'larkspur');
  const shown = await page.until(() => {
    const [count = ''] = document.querySelector('.list-count')?.textContent?.split(' of ') ?? [];
    return Number(count);
  });
  const figure = await page.run(() => document.querySelector('.lot-figure')?.textContent?.replace(/[$,]/g, ''));
  const { name, text } = await page.download(() => page.click({ button: 'Save as CSV' }));
  expect(name).toMatch(/^lots-\d{4}-\d{2}-\d{2}\.csv$/);
  const lines = text.trimEnd().split('\r\n');
  // With what the plan bids between them, once there is a plan.
  expect(lines[0]).toMatch(/,Max bid,(?:[^,]+,)?Headroom,Bid state/);
  expect(lines.length).toBe(shown + 1);
  expect(text).toContain(`,${figure},`);
  await goTo(page, '#/add');
  await page.fill({ field: 'Rows' }, text);
  await page.click({ button: 'Preview rows' });
  await page.sees(`${shown} rows were read`);
  expect(await page.run(() => document.querySelectorAll('select[aria-label^="What to do"]').length)).toBeGreaterThan(0);
});

test('a change on the worksheet moves the max bid at once, is told in another tab, and is undone with Undo', async () => {
  const page = await openSheet();
  const other = await browser.open('options-page/index.html#/lots');
  await page.toFront();
  const before = await page.text('.worksheet-stop .figure-large');
  await page.fill({ field: 'Transport quote' }, '900');
  await page.press('Enter');
  await page.until((old) => document.querySelector('.worksheet-stop .figure-large')?.textContent !== old, before);
  const after = await page.text('.worksheet-stop .figure-large');
  await other.until((wanted) => document.querySelector('.lot-table')?.textContent?.includes(wanted), after);
  await page.click({ button: 'Undo' });
  await page.until((old) => document.querySelector('.worksheet-stop .figure-large')?.textContent === old, before);
  await other.close();
});

test('what can’t be read stays in the box with the reason, and nothing is kept', async () => {
  const page = await browser.pageAt('options-page/index.html');
  const before = await page.text('.worksheet-stop .figure-large');
  await page.fill({ field: 'Price now' }, '3.456');
  await page.press('Enter');
  await page.sees('could mean');
  expect(await page.text('.worksheet-stop .figure-large')).toBe(before);
});

/** The worksheet of the first lot of the list that has a max bid. */
async function openSheet() {
  const page = await browser.pageAt('options-page/index.html');
  await goTo(page, '#/lots');
  // The list is as it was left: with all lots in it, closed ones too.
  await page.click({ button: 'Still open' });
  await page.fill({ field: 'Search the lots' }, '');
  await page.until(() => document.querySelector('.lot-figure'));
  await page.run(() => {
    document.querySelector<HTMLAnchorElement>('.lot-row:has(.lot-figure) .lot-name')?.click();
  });
  await page.until(() => document.querySelector('.stairs'));
  return page;
}

test('a time-stamp request goes out, OpenSSL answers it, and what is stamped is told with its time and its authority', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'office-'));
  try {
    const offices = (['rsa', 'ec'] as const).map((key) => new Authority(folder, { name: `Office ${key}`, key }));
    const page = await browser.pageAt('options-page/index.html');
    await goTo(page, '#/backup');
    await page.sees('Nothing is stamped yet.');
    await page.run(() => {
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob: Blob) => {
        void blob.arrayBuffer().then((bytes) => {
          document.body.dataset.saved = [...new Uint8Array(bytes)].join(' ');
        });
        return make.call(URL, blob);
      };
    });
    const take = (bytes: readonly number[]) =>
      page.run((all) => {
        const box = document.querySelector<HTMLInputElement>('input[accept=".tsr,.tst,.der"]');
        const picked = new DataTransfer();
        picked.items.add(new File([new Uint8Array(all)], 'answer.tsr'));
        if (box === null) throw new Error('no box for an answer');
        box.files = picked.files;
        box.dispatchEvent(new Event('change', { bubbles: true }));
      }, bytes);
    await page.click({ button: 'Save a time-stamp request' });
    const saved = await page.until(() => document.body.dataset.saved);
    const request = Uint8Array.from(saved.split(' ').map(Number));
    await take([...request]);
    await page.sees('Nothing was changed.');
    for (const office of offices) {
      await take([...office.answer(request)]);
      await page.sees(`${office.name}, Invented`);
    }
    expect(await page.count('.stamps tbody tr')).toBe(2);
    expect(await page.count('.keep [role="alert"]')).toBe(0);
    expect(await page.text('.stamps tbody tr')).toMatch(/^entry [\d,]+ of this browser/);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
