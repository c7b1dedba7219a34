import { afterEach, expect, test, vi } from 'vitest';
import { onInstalled } from '../../src/browser/lifecycle.ts';

afterEach(() => vi.unstubAllGlobals());

/** A browser that can say that the extension was installed, as a package with these sites in its manifest. */
function browserThatInstalls(sites?: readonly string[]) {
  const listeners: ((details: { reason: string }) => void)[] = [];
  vi.stubGlobal('chrome', {
    runtime: {
      onInstalled: { addListener: (listener: (details: { reason: string }) => void) => listeners.push(listener) },
      getManifest: () => (sites === undefined ? {} : { host_permissions: sites }),
    },
  });
  return (reason: string) => {
    for (const listener of listeners) listener({ reason });
  };
}

// Firefox adds an empty list to a manifest that names no sites, Chromium nothing.
test.each([[undefined], [[]]])('the first page opens once, at the installation, and not at an update', (sites) => {
  const installs = browserThatInstalls(sites);
  const opened = vi.fn();
  onInstalled(opened);
  installs('update');
  installs('chrome_update');
  expect(opened).not.toHaveBeenCalled();
  installs('install');
  expect(opened).toHaveBeenCalledTimes(1);
});

test('it stays away from the packages of the tests', () => {
  const installs = browserThatInstalls(['http://localhost/*']);
  const opened = vi.fn();
  onInstalled(opened);
  installs('install');
  expect(opened).not.toHaveBeenCalled();
});
