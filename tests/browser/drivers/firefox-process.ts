import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import path from 'node:path';
import { GECKO_ID } from '../../../manifest/manifest.ts';
import { TEST_FIREFOX_HOST } from '../../../manifest/test-identity.ts';
import { ensureBrowser } from '../../../scripts/ensure-browser.ts';
import { Marionette } from './marionette.ts';
import { waitUntil } from './wait-until.ts';

const START_MS = 60_000;
const QUIT_MS = 10_000;

export interface FirefoxProcess {
  readonly marionette: Marionette;
  quit(): Promise<void>;
  kill(): Promise<void>;
}

/** Where a profile's downloads go. */
export function downloadFolder(profile: string): string {
  return path.join(profile, 'downloads');
}

/** Starts Firefox on `profile`, without a window, and connects to it. */
export async function startFirefoxProcess(profile: string, timeZone?: string): Promise<FirefoxProcess> {
  const port = await freePort();
  mkdirSync(downloadFolder(profile), { recursive: true });
  writeFileSync(path.join(profile, 'user.js'), preferences(profile, port));
  const child = spawn(
    ensureBrowser('firefox'),
    ['--marionette', '--remote-allow-system-access', '--headless', '--no-remote', '--profile', profile],
    { stdio: 'ignore', env: { ...process.env, MOZ_HEADLESS: '1', ...(timeZone ? { TZ: timeZone } : {}) } },
  );
  const killWithUs = () => child.kill('SIGKILL');
  process.once('exit', killWithUs);
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const marionette = await connectTo(child, port);
  const ended = async () => {
    await gone;
    marionette.close();
    process.off('exit', killWithUs);
  };
  return {
    marionette,
    async quit() {
      await marionette.send('Marionette:Quit', { flags: ['eForceQuit'] }).catch(() => undefined);
      const stubborn = setTimeout(killWithUs, QUIT_MS);
      await ended();
      clearTimeout(stubborn);
    },
    async kill() {
      killWithUs();
      await ended();
    },
  };
}

function connectTo(child: ChildProcess, port: number): Promise<Marionette> {
  return waitUntil(
    'Firefox to listen',
    () => {
      if (child.exitCode !== null) throw new Error(`Firefox ended with code ${child.exitCode}`);
      return Marionette.connect(port);
    },
    START_MS,
  );
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

function preferences(profile: string, port: number): string {
  const wishes = {
    'marionette.port': port,
    // A fixed address for the extension's pages, and an extension that nobody has signed.
    'extensions.webextensions.uuids': JSON.stringify({ [GECKO_ID]: TEST_FIREFOX_HOST }),
    'xpinstall.signatures.required': false,
    'extensions.autoDisableScopes': 0,
    'extensions.webextOptionalPermissionPrompts': false,
    // Without a screen the system shows no notices; Firefox's own can be listed and clicked.
    'alerts.useSystemBackend': false,
    'browser.download.folderList': 2,
    'browser.download.dir': downloadFolder(profile),
    'browser.download.useDownloadDir': true,
    'browser.download.always_ask_before_handling_new_types': false,
    // Nothing that starts by itself, and nothing that asks the net.
    'browser.shell.checkDefaultBrowser': false,
    'browser.aboutwelcome.enabled': false,
    'browser.startup.page': 0,
    'datareporting.policy.dataSubmissionEnabled': false,
    'app.update.disabledForTesting': true,
    'network.captive-portal-service.enabled': false,
    'network.connectivity-service.enabled': false,
    'services.settings.server': 'data:,',
    'toolkit.startup.max_resumed_crashes': -1,
    // Small machines: no process is started before it is needed, and a frame now and then is enough for nobody's eyes.
    'dom.ipc.processPrelaunch.enabled': false,
    'dom.ipc.processCount': 2,
    'dom.ipc.processCount.webIsolated': 1,
    'layout.frame_rate': 20,
    'toolkit.cosmeticAnimations.enabled': false,
    'browser.safebrowsing.malware.enabled': false,
    'browser.safebrowsing.phishing.enabled': false,
    'browser.pagethumbnails.capturing_disabled': true,
    'browser.sessionstore.resume_from_crash': false,
    'toolkit.telemetry.enabled': false,
    'toolkit.telemetry.unified': false,
  };
  const lines = Object.entries(wishes).map(([name, value]) => `user_pref("${name}", ${JSON.stringify(value)});`);
  return `${lines.join('\n')}\n`;
}
