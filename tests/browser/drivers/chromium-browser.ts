import type { BrowserContext, CDPSession, Worker } from 'playwright-core';
import { TEST_CHROMIUM_ID } from '../../../manifest/test-identity.ts';
import { launchChromium } from '../../../scripts/launch-chromium.ts';
import { endUsers, removeFolder, temporaryFolder } from '../../../scripts/temporary-folder.ts';
import type { Browser, Page, Popup } from './browser.ts';
import { ChromiumPage } from './chromium-page.ts';
import { ChromiumPopup } from './chromium-popup.ts';
import { waitUntil } from './wait-until.ts';

const ORIGIN = `chrome-extension://${TEST_CHROMIUM_ID}/`;

interface Target {
  readonly targetId: string;
  readonly type: string;
  readonly url: string;
  readonly attached: boolean;
}

/**
 * Starts Chromium, without a window, with the unpacked extension of `folder`.
 * @param disk where its profile lies; among the system's temporary folders when left out
 */
export async function startChromium(folder: string, timeZone?: string, disk?: string): Promise<Browser> {
  const browser = new ChromiumBrowser(folder, timeZone, disk);
  await browser.start();
  return browser;
}

class ChromiumBrowser implements Browser {
  readonly name = 'chromium';
  readonly #profile: string;
  readonly #folder: string;
  readonly #timeZone: string | undefined;
  #running: { context: BrowserContext; protocol: CDPSession; askPage: ChromiumPage } | undefined;
  #complaints: string[] = [];

  constructor(folder: string, timeZone: string | undefined, disk: string | undefined) {
    this.#profile = temporaryFolder(disk);
    this.#folder = folder;
    this.#timeZone = timeZone;
  }

  async start(): Promise<void> {
    const context = await launchChromium({
      profile: this.#profile,
      extension: this.#folder,
      window: false,
      timeZone: this.#timeZone,
      // Starting one for every tab takes half of a small machine.
      processes: 2,
    });
    context.on('console', (message) => {
      const from = message.location().url || message.page()?.url() || ORIGIN;
      if (message.type() === 'error' && from.startsWith(ORIGIN)) this.#complaints.push(message.text());
    });
    context.on('weberror', (failure) => {
      if (failure.page()?.url().startsWith(ORIGIN)) this.#complaints.push(String(failure.error()));
    });
    const protocol = await context.browser()?.newBrowserCDPSession();
    if (protocol === undefined) throw new Error('Chromium gave no connection of its own to talk to');
    const first = context.pages()[0] ?? (await context.newPage());
    const askPage = new ChromiumPage(first, (file) => this.url(file));
    this.#running = { context, protocol, askPage };
    await waitUntil('Chromium to load the extension', async () => {
      await askPage.go('bare-pages/bare.html');
      return true;
    });
  }

  url(file: string): string {
    return /^[a-z-]+:/.test(file) ? file : ORIGIN + file;
  }

  async open(fileOrUrl: string): Promise<Page> {
    const page = this.#wrap(await this.#use().context.newPage());
    await page.go(fileOrUrl);
    return page;
  }

  pageAt(fileOrUrl: string): Promise<Page> {
    return waitUntil(`a tab at ${fileOrUrl}`, async () => {
      const found = this.#pagesAt(fileOrUrl)[0];
      return found && this.#wrap(found);
    });
  }

  async countPages(fileOrUrl: string): Promise<number> {
    return this.#pagesAt(fileOrUrl).length;
  }

  async clickToolbarButton(page: Page): Promise<Popup> {
    await page.toFront();
    const { context, protocol } = this.#use();
    if (!(page instanceof ChromiumPage)) throw new TypeError('this page is of another browser');
    const session = await context.newCDPSession(page.inner);
    const { targetInfo } = await session.send('Target.getTargetInfo');
    await session.detach();
    // The button belongs to the tab, which is a target of its own around the page's.
    const tabs = await this.#targets([{ type: 'tab' }, {}]);
    const tab = tabs.find((target) => target.type === 'tab' && target.url === targetInfo.url);
    if (tab === undefined) throw new Error(`Chromium knows no tab at ${targetInfo.url}`);
    const action = { id: TEST_CHROMIUM_ID, targetId: tab.targetId };
    // The command is newer than the typings of the protocol.
    await protocol.send('Extensions.triggerAction' as 'Target.activateTarget', action);
    return this.openedPopup();
  }

  async openedPopup(patienceMs?: number): Promise<Popup> {
    const find = async () => {
      const pages = await this.#targets([{ type: 'page' }]);
      return pages.find((target) => target.url.startsWith(this.url('popup/popup.html')) && !target.attached);
    };
    const popup = await waitUntil('the popup to open', find, patienceMs);
    return ChromiumPopup.attach(this.#use().protocol, popup.targetId);
  }

  async killBackground(): Promise<void> {
    for (const { targetId } of await this.#workers()) {
      await this.#use().protocol.send('Target.closeTarget', { targetId });
    }
  }

  async stopBackground(): Promise<void> {
    await this.killBackground();
    await waitUntil('the background to stop', async () => !(await this.backgroundRuns()));
  }

  async backgroundRuns(): Promise<boolean> {
    return (await this.#workers()).length > 0;
  }

  async noticeIds(): Promise<readonly string[]> {
    return this.ask(async () => Object.keys(await chrome.notifications.getAll()));
  }

  async clickNotice(id: string): Promise<void> {
    await waitUntil(`the notice ${id}`, async () => (await this.noticeIds()).includes(id));
    // Without a screen there is nothing to click on, so the listeners are called as the browser would call them.
    const worker = await this.#awakeWorker();
    await worker.evaluate(
      (clicked) => (chrome.notifications.onClicked as unknown as { dispatch(id: string): void }).dispatch(clicked),
      id,
    );
  }

  async pressNoticeButton(id: string, index: number): Promise<boolean> {
    const worker = await this.#awakeWorker();
    await worker.evaluate(
      ([notice, button]) =>
        (chrome.notifications.onButtonClicked as unknown as { dispatch(id: string, index: number): void }).dispatch(
          notice,
          button,
        ),
      [id, index] as const,
    );
    return true;
  }

  ask<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result> {
    return this.#use().askPage.run(task, ...args);
  }

  async restart(how: 'quit' | 'killed' = 'quit'): Promise<void> {
    const { context } = this.#use();
    if (how === 'killed') {
      const gone = new Promise((resolve) => context.once('close', resolve));
      // Until none is left: one that still held the databases would be in the way of the next start.
      await waitUntil('every process of Chromium to be gone', async () => endUsers(this.#profile) === 0);
      await gone;
    } else await context.close();
    await this.start();
  }

  async takeComplaints(): Promise<readonly string[]> {
    const taken = this.#complaints;
    this.#complaints = [];
    return taken;
  }

  async close(): Promise<void> {
    await this.#running?.context.close();
    this.#running = undefined;
    removeFolder(this.#profile);
  }

  #use() {
    if (this.#running === undefined) throw new Error('Chromium is closed');
    return this.#running;
  }

  #wrap(page: ChromiumPage['inner']): ChromiumPage {
    return new ChromiumPage(page, (file) => this.url(file));
  }

  #pagesAt(fileOrUrl: string): ChromiumPage['inner'][] {
    const start = this.url(fileOrUrl);
    return this.#use()
      .context.pages()
      .filter((page) => page.url().startsWith(start));
  }

  async #targets(filter: readonly object[]): Promise<readonly Target[]> {
    const { targetInfos } = await this.#use().protocol.send('Target.getTargets', { filter: [...filter] });
    return targetInfos;
  }

  async #workers(): Promise<readonly Target[]> {
    const all = await this.#targets([{ type: 'service_worker' }]);
    return all.filter((target) => target.url.startsWith(ORIGIN));
  }

  /** A stopped worker never answers, so it is woken first, by a message that nobody has to understand. */
  async #awakeWorker(): Promise<Worker> {
    await this.ask(() => chrome.runtime.sendMessage({}).catch(() => undefined));
    return waitUntil('the background to wake', async () => {
      if (!(await this.backgroundRuns())) return undefined;
      return this.#use()
        .context.serviceWorkers()
        .find((worker) => worker.url().startsWith(ORIGIN));
    });
  }
}
