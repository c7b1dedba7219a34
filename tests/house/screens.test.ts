import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { DEMO_SCREENS } from '../../scripts/demo-screens.ts';

/** Every screen that an address can lead to, as `route.ts` declares them. */
const screens = [...readFileSync('options-page/shell/route.ts', 'utf8').matchAll(/readonly screen: '([a-z-]+)'/g)].map(
  ([, screen = '']) => screen,
);
/** The demo's loading is over before anybody could look, and what leads nowhere is three lines of text. */
const SHOWN = screens.filter((screen) => screen !== 'demo-load' && screen !== 'unknown');
const leadsTo = (screen: string) => new RegExp(`#/${screen}(?![a-z-])`);

test('every screen has its picture taken', () => {
  expect(SHOWN.length).toBeGreaterThan(15);
  const pictured = DEMO_SCREENS.map(({ address, follow = [] }) => [address, ...follow].join(' ')).join(' ');
  expect(SHOWN.filter((screen) => !leadsTo(screen).test(pictured))).toEqual([]);
});

test('every screen is judged by axe in both browsers', () => {
  const judged = ['accessible', 'first-run']
    .map((name) => readFileSync(`tests/browser/${name}.test.ts`, 'utf8'))
    .join();
  // The worksheet's address comes from the list, and the history's from the worksheet's.
  const byLink = new Set(['lot', 'history']);
  expect(judged).toContain("sheet, sheet.replace('lot', 'history')");
  expect(SHOWN.filter((screen) => !byLink.has(screen) && !leadsTo(screen).test(judged))).toEqual([]);
});
