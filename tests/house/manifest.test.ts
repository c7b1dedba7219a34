import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { manifest } from '../../manifest/manifest.ts';
import { TEST_CHROMIUM_ID, TEST_KEY } from '../../manifest/test-identity.ts';
import { sourceFiles, withoutComments } from './source-files.ts';

/** Where each permission is used, so that one nobody needs any more is found. */
const USED_AS = {
  activeTab: /\.tabs\.query\(/,
  alarms: /\.alarms\./,
  contextMenus: /\.contextMenus\./,
  notifications: /\.notifications\./,
  scripting: /\.scripting\./,
  storage: /\.storage\.session\./,
  unlimitedStorage: /\bindexedDB\b|from 'idb'/,
} as const;

const inBoth = (['chromium', 'firefox'] as const).map((browser) => ({ browser, made: manifest(browser) }));

/** Chromium’s alone: it opens the page of the team’s program. */
const OFFSCREEN = /\boffscreen\.createDocument\(/;

describe.each(inBoth)('the manifest for $browser', ({ browser, made }) => {
  test('asks for these permissions and no others', () => {
    expect(made.permissions).toEqual([
      'activeTab',
      'alarms',
      'contextMenus',
      'notifications',
      'scripting',
      'storage',
      'unlimitedStorage',
      ...(browser === 'chromium' ? ['offscreen'] : []),
    ]);
  });

  test('asks for no site at all beforehand, and for one at a time later', () => {
    expect(made.host_permissions).toBeUndefined();
    expect(made.content_scripts).toBeUndefined();
    expect(made.optional_host_permissions).toEqual(['https://*/*', 'http://*/*']);
  });

  test('lets nothing in from outside, and nothing out but to the server of a team, over TLS or on this computer', () => {
    const { extension_pages: policy } = made.content_security_policy as { extension_pages: string };
    const rules = policy.split('; ');
    const connect = 'connect-src wss: ws://127.0.0.1:* ws://localhost:*';
    for (const rule of ["default-src 'none'", "script-src 'self'", connect, "form-action 'none'"])
      expect(rules).toContain(rule);
    const others = rules.filter((rule) => rule !== connect).join('; ');
    expect(others).not.toMatch(/[a-z]+:\/\/|https?:|wss?:|\*|unsafe/);
  });

  test('is version 3, with a version of our own', () => {
    expect(made.manifest_version).toBe(3);
    expect(made.version).toMatch(/^\d+\.\d+\.\d+$/);
    // The most that the stores take.
    expect(String(made.description).length).toBeLessThanOrEqual(132);
  });
});

test('the two manifests differ in these things only', () => {
  const [chromium = {}, firefox = {}] = inBoth.map(({ made }) => made);
  const names = [...new Set([...Object.keys(chromium), ...Object.keys(firefox)])];
  const different = names.filter((name) => JSON.stringify(chromium[name]) !== JSON.stringify(firefox[name]));
  expect(Object.fromEntries(different.map((name) => [name, [chromium[name], firefox[name]]]))).toEqual({
    minimum_chrome_version: ['127', undefined],
    permissions: [manifest('chromium').permissions, manifest('firefox').permissions],
    background: [
      { service_worker: 'background.js', type: 'module' },
      { scripts: ['background.js'], type: 'module' },
    ],
    browser_specific_settings: [
      undefined,
      {
        gecko: {
          id: 'headroom@headroom.example',
          strict_min_version: '140.0',
          data_collection_permissions: {
            required: ['none'],
            optional: ['personallyIdentifyingInfo', 'financialAndPaymentInfo', 'browsingActivity', 'websiteContent'],
          },
        },
        gecko_android: { strict_min_version: '142.0' },
      },
    ],
  });
});

test.each(['chromium', 'firefox'] as const)(
  'the test variant for %s differs in identity and local pages only',
  (browser) => {
    const { key, host_permissions, ...rest } = manifest(browser, 'test');
    expect(rest).toEqual(manifest(browser));
    expect(host_permissions).toEqual(['http://localhost/*', 'http://127.0.0.1/*']);
    expect(key).toBe(browser === 'chromium' ? TEST_KEY : undefined);
  },
);

test("the test variant's identifier is the one Chromium makes of its key", () => {
  const digits = createHash('sha256').update(Buffer.from(TEST_KEY, 'base64')).digest('hex').slice(0, 32);
  const letters = [...digits].map((digit) => String.fromCharCode(97 + Number.parseInt(digit, 16))).join('');
  expect(TEST_CHROMIUM_ID).toBe(letters);
});

test('every permission is used', () => {
  const code = sourceFiles(['src'], ['.ts', '.tsx'])
    .map((file) => withoutComments(file.text))
    .join('\n');
  expect(code).toMatch(OFFSCREEN);
  expect(Object.keys(USED_AS)).toEqual(manifest('firefox').permissions);
  expect(
    Object.entries(USED_AS)
      .filter(([, use]) => !use.test(code))
      .map(([permission]) => permission),
  ).toEqual([]);
});
