import { cpSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { GECKO_ID } from '../../../manifest/manifest.ts';
import { TEST_FIREFOX_HOST } from '../../../manifest/test-identity.ts';
import { removeFolder, temporaryFolder } from '../../../scripts/temporary-folder.ts';
import type { Browser, Page, Popup } from './browser.ts';
import { FirefoxPage } from './firefox-page.ts';
import { FirefoxPopup } from './firefox-popup.ts';
import { downloadFolder, type FirefoxProcess, startFirefoxProcess } from './firefox-process.ts';
import type { Marionette } from './marionette.ts';
import { packZip } from './pack-zip.ts';
import { waitUntil } from './wait-until.ts';

const ORIGIN = `moz-extension://${TEST_FIREFOX_HOST}/`;

/** What Firefox itself says when a page is closed or reloaded while a message of its is under way; nobody can prevent that. */
const CLOSED_MEANWHILE = [
  'Promise rejected after context unloaded',
  'Promise resolved after context unloaded',
  'Promise resolved while context is inactive',
];

/**
 * Starts Firefox, without a window, with the unpacked extension of `folder` packed and installed for good.
 * @param usedProfile a profile to begin with a copy of
 * @param disk where its profile lies; among the system's temporary folders when left out
 */
export async function startFirefox(
  folder: string,
  timeZone?: string,
  usedProfile?: string | null,
  disk?: string,
): Promise<Browser> {
  const browser = new FirefoxBrowser(timeZone, usedProfile, disk);
  await browser.start();
  await browser.install(folder);
  return browser;
}

class FirefoxBrowser implements Browser {
  readonly name = 'firefox';
  readonly #profile: string;
  readonly #timeZone: string | undefined;
  #running: { process: FirefoxProcess; askPage: FirefoxPage } | undefined;

  constructor(timeZone: string | undefined, usedProfile?: string | null, disk?: string) {
    this.#profile = temporaryFolder(disk);
    this.#timeZone = timeZone;
    if (usedProfile) cpSync(usedProfile, this.#profile, { recursive: true });
  }

  async start(): Promise<void> {
    const process = await startFirefoxProcess(this.#profile, this.#timeZone);
    const { marionette } = process;
    const handle = (await marionette.send<{ value: string }>('WebDriver:GetWindowHandle')).value;
    this.#running = { process, askPage: this.#page(marionette, handle) };
  }

  async install(folder: string): Promise<void> {
    const archive = path.join(this.#profile, 'headroom.xpi');
    writeFileSync(archive, packZip(folder));
    await this.#marionette.send('Addon:Install', { path: archive, temporary: false });
    await this.#use().askPage.go('bare-pages/bare.html');
  }

  url(file: string): string {
    return /^[a-z-]+:/.test(file) ? file : ORIGIN + file;
  }

  async open(fileOrUrl: string): Promise<Page> {
    const { handle } = await this.#marionette.alone(() =>
      this.#marionette.send<{ handle: string }>('WebDriver:NewWindow', { type: 'tab', focus: true }),
    );
    const page = this.#page(this.#marionette, handle);
    await page.go(fileOrUrl);
    return page;
  }

  pageAt(fileOrUrl: string): Promise<Page> {
    return waitUntil(`a tab at ${fileOrUrl}`, async () => (await this.#pagesAt(fileOrUrl))[0]);
  }

  async countPages(fileOrUrl: string): Promise<number> {
    return (await this.#pagesAt(fileOrUrl)).length;
  }

  async clickToolbarButton(page: Page): Promise<Popup> {
    await page.toFront();
    await this.#privileged(`async (id) => {
      const { ExtensionParent } = ChromeUtils.importESModule("resource://gre/modules/ExtensionParent.sys.mjs");
      const { extension } = WebExtensionPolicy.getByID(id);
      ExtensionParent.apiManager.global.browserActionFor(extension).triggerAction(window);
    }`);
    return this.openedPopup();
  }

  async openedPopup(patienceMs?: number): Promise<Popup> {
    const popup = new FirefoxPopup(this.#marionette);
    await waitUntil('the popup to open', () => popup.isOpen(), patienceMs);
    return popup;
  }

  async killBackground(): Promise<void> {
    await this.#privileged(`async (id) => {
      const { extension } = WebExtensionPolicy.getByID(id);
      await extension.terminateBackground({ ignoreDevToolsAttached: true, disableResetIdleForTest: true });
    }`);
  }

  async stopBackground(): Promise<void> {
    await this.killBackground();
    await waitUntil('the background to stop', async () => !(await this.backgroundRuns()));
  }

  async backgroundRuns(): Promise<boolean> {
    const state = await this.#privileged('async (id) => WebExtensionPolicy.getByID(id).extension.backgroundState');
    return state === 'running' || state === 'starting';
  }

  async noticeIds(): Promise<readonly string[]> {
    return this.ask(async () => Object.keys(await chrome.notifications.getAll()));
  }

  async clickNotice(id: string): Promise<void> {
    await waitUntil(`the notice ${id}`, async () => (await this.noticeIds()).includes(id));
    // As Firefox itself tells of a click on the notice, whatever stands on the screen at the moment.
    await this.#privileged(
      `async (id, notice) => {
        const { ExtensionParent } = ChromeUtils.importESModule("resource://gre/modules/ExtensionParent.sys.mjs");
        const { extension } = WebExtensionPolicy.getByID(id);
        const shown = ExtensionParent.apiManager.getAPI("notifications", extension).notificationsMap.get(notice);
        shown.observe(null, "alertclickcallback", notice);
        shown.observe(null, "alertfinished", notice);
      }`,
      id,
    );
  }

  async pressNoticeButton(): Promise<boolean> {
    return false;
  }

  ask<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result> {
    return this.#use().askPage.run(task, ...args);
  }

  async restart(how: 'quit' | 'killed' = 'quit'): Promise<void> {
    if (how === 'killed') await this.#installationOnDisk();
    await this.#use().process[how === 'quit' ? 'quit' : 'kill']();
    await this.start();
    await waitUntil('the extension to be there again', async () => {
      await this.#use().askPage.go('bare-pages/bare.html');
      return true;
    });
  }

  async takeComplaints(): Promise<readonly string[]> {
    return this.#privileged(
      `async (_, origin, harmless) => {
        const errors = Services.console.getMessageArray().filter(
          (entry) => entry instanceof Ci.nsIScriptError && !(entry.flags & Ci.nsIScriptError.warningFlag)
            && (entry.sourceName ?? "").startsWith(origin));
        Services.console.reset();
        return errors.map((entry) => entry.errorMessage).filter((text) => !harmless.some((one) => text.startsWith(one)));
      }`,
      ORIGIN,
      CLOSED_MEANWHILE,
    );
  }

  async close(): Promise<void> {
    await this.#running?.process.quit();
    this.#running = undefined;
    removeFolder(this.#profile);
  }

  /** Firefox writes down what is installed some seconds later; killed before that, it starts again without the extension. */
  async #installationOnDisk(): Promise<void> {
    await waitUntil('Firefox to have the installation on disk', async () => {
      const database = JSON.parse(await readFile(path.join(this.#profile, 'extensions.json'), 'utf8'));
      if (!database.addons.some((addon: { readonly id: string }) => addon.id === GECKO_ID)) return false;
      // This one is compressed, so Firefox is asked to read it.
      return this.#privileged<boolean>(`async (id) => {
        const startup = Cc["@mozilla.org/addons/addon-manager-startup;1"].getService(Ci.amIAddonManagerStartup);
        return startup.readStartupData()?.["app-profile"]?.addons?.[id]?.enabled === true;
      }`);
    });
  }

  get #marionette(): Marionette {
    return this.#use().process.marionette;
  }

  #use() {
    if (this.#running === undefined) throw new Error('Firefox is closed');
    return this.#running;
  }

  #page(marionette: Marionette, handle: string): FirefoxPage {
    const downloads = downloadFolder(this.#profile);
    return new FirefoxPage({ marionette, handle, downloads, address: (file) => this.url(file) });
  }

  async #pagesAt(fileOrUrl: string): Promise<FirefoxPage[]> {
    const start = this.url(fileOrUrl);
    const handles = await this.#marionette.send<readonly string[]>('WebDriver:GetWindowHandles');
    const pages = handles.map((handle) => this.#page(this.#marionette, handle));
    const urls = await Promise.all(pages.map((page) => page.url()));
    return pages.filter((_, i) => urls[i]?.startsWith(start));
  }

  /** Runs `task` in the browser's own window; its first argument is the extension's id. */
  #privileged<Result>(task: string, ...args: readonly unknown[]): Promise<Result> {
    return this.#marionette.alone(() => this.#marionette.run<Result>(task, [GECKO_ID, ...args], true));
  }
}
