import pkg from '../package.json' with { type: 'json' };
import { TEST_KEY } from './test-identity.ts';

export type BrowserName = 'chromium' | 'firefox';

/** The test variant is the same program; only its identity is fixed and pages of this machine may be read unasked. */
export type Variant = 'shipped' | 'test';

/** How Firefox knows the extension. */
export const GECKO_ID = 'headroom@headroom.example';

/**
 * No remote code, picture, font, request, frame or form. Nothing goes out but to the server of a team that the user joined, at
 * the address that he typed: over TLS, or to a server on this very computer.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  'connect-src wss: ws://127.0.0.1:* ws://localhost:*',
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** The manifest of both browsers, from the one description of the extension below. */
export function manifest(browser: BrowserName, variant: Variant = 'shipped'): Record<string, unknown> {
  return {
    ...COMMON,
    ...(browser === 'chromium' ? chromiumOnly(variant) : FIREFOX_ONLY),
    ...(variant === 'test' ? { host_permissions: ['http://localhost/*', 'http://127.0.0.1/*'] } : {}),
  };
}

const ICONS = { 16: 'icons/16.png', 32: 'icons/32.png', 48: 'icons/48.png', 128: 'icons/128.png' };

const COMMON = {
  manifest_version: 3,
  name: 'Headroom',
  version: pkg.version,
  description: pkg.description,
  icons: ICONS,
  // Each one is used in src/browser; a test sees to it that none stands here unused.
  permissions: ['activeTab', 'alarms', 'contextMenus', 'notifications', 'scripting', 'storage', 'unlimitedStorage'],
  // Asked for one site at a time, by the user's own click, and given back in Setup.
  optional_host_permissions: ['https://*/*', 'http://*/*'],
  action: { default_title: 'Headroom', default_popup: 'popup/popup.html', default_icon: ICONS },
  options_ui: { page: 'options-page/index.html', open_in_tab: true },
  commands: {
    _execute_action: { suggested_key: { default: 'Alt+Shift+H' } },
    'read-page': { suggested_key: { default: 'Alt+Shift+L' }, description: 'Read this page' },
  },
  content_security_policy: { extension_pages: POLICY },
} as const;

function chromiumOnly(variant: Variant): Record<string, unknown> {
  return {
    // The first in which the background may open the popup.
    minimum_chrome_version: '127',
    // A page without a window, for the team's program: a worker can't load one later.
    permissions: [...COMMON.permissions, 'offscreen'],
    background: { service_worker: 'background.js', type: 'module' },
    ...(variant === 'test' ? { key: TEST_KEY } : {}),
  };
}

const FIREFOX_ONLY = {
  background: { scripts: ['background.js'], type: 'module' },
  browser_specific_settings: {
    gecko: {
      id: GECKO_ID,
      strict_min_version: '140.0',
      // For Mozilla everything that leaves the browser is transmitted, to the user's own server too (extensionworkshop.com, “Firefox
      // built-in consent for data collection and transmission” and the add-on policies). Nothing is required; what a team's journal
      // holds is asked for when he starts or joins one: names of people, prices and payments, addresses of pages, and what stood there.
      data_collection_permissions: {
        required: ['none'],
        optional: ['personallyIdentifyingInfo', 'financialAndPaymentInfo', 'browsingActivity', 'websiteContent'],
      },
    },
    // The first for telephones that knows what is said above of data.
    gecko_android: { strict_min_version: '142.0' },
  },
} as const;
