// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test, vi } from 'vitest';
import { holdPainting, showFirstRows } from '../../../options-page/first/show-first-rows.tsx';
import { columnOf } from '../../../options-page/lots/columns.tsx';
import { LotTable } from '../../../options-page/lots/lot-table.tsx';
import { firstFrame } from '../../../scripts/first-frame.ts';
import { demoScenario } from '../../../src/demo/demo-scenario.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../../src/journal/sortable-id.ts';
import { FIRST_VIEW } from '../../../src/views/lots/first-view.ts';
import { orderLots } from '../../../src/views/lots/list-order.ts';
import { standingsUnder } from '../../../src/views/lots/standing.ts';
import { wordsUnder } from '../../../src/views/lots/words-under.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../../store/open-test-store.ts';

const NOW = instant(Date.parse('2026-11-26T17:00Z'));
const rowsOn = (page: HTMLElement) => [...page.querySelectorAll('.lot-row')].map(({ outerHTML }) => outerHTML);

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
  document.body.replaceChildren();
});

/** The page as the build makes it, before any program of ours has run. */
function openedPage(): HTMLElement {
  const frames = [false, true].map((narrow) => {
    const name = narrow ? 'first-narrow' : 'first-wide';
    return `<template id="${name}">${firstFrame(name)}</template>`;
  });
  document.body.innerHTML = `<div id="page"><p id="opening">Opening your lots…</p></div>${frames.join('')}`;
  return document.body.firstElementChild as HTMLElement;
}

async function demoLots(): Promise<{ lots: readonly LotState[]; setup: ReturnType<typeof demoScenario>['setup'] }> {
  freshBrowser();
  const store = await openTestStore();
  const random = testRandom(7);
  const { setup, lots } = demoScenario(NOW, () => nextLotId(NOW, null, random(ID_RANDOM_BYTES)));
  value(await store.addLots('typed', lots));
  return { lots: await store.allLots(), setup };
}

test.each([false, true])('are drawn as the list draws them, on a screen that is narrow: %s', async (narrow) => {
  const media = { matches: narrow, addEventListener: () => undefined, removeEventListener: () => undefined };
  vi.stubGlobal('matchMedia', () => media);
  vi.setSystemTime(NOW);
  const { lots, setup } = await demoLots();
  const standings = standingsUnder(setup);
  const wordsOf = wordsUnder(setup, standings, lots);
  // What has no close yet comes last in the list, and never among the first to close.
  const shown = orderLots(lots, FIRST_VIEW, {
    works: standings,
    now: NOW,
    by: columnOf('close')?.by ?? (() => () => null),
  }).filter(({ facts }) => facts.close !== undefined);
  const early = openedPage();
  const list = document.createElement('div');
  document.body.append(list);
  act(() =>
    render(
      <LotTable
        lines={shown}
        view={FIRST_VIEW}
        onView={() => undefined}
        wordsOf={wordsOf}
        now={NOW}
        table={{ current: null }}
        choice={{ has: () => false, allShown: false, pressAll: () => undefined }}
      />,
      list,
    ),
  );
  // A lot that has closed since is no longer among them.
  const over = lots.filter(({ facts }) => facts.close !== undefined && facts.close.instant <= NOW);
  holdPainting();
  expect(document.documentElement.className).toBe('held');
  const drawing = showFirstRows([...over, ...shown].map(wordsOf), early);
  // At once: what it waits for is that they have been seen.
  expect(document.documentElement.className).toBe('');
  await drawing;
  const [drawn, wanted] = [rowsOn(early), rowsOn(list)];
  expect(over.length).toBeGreaterThan(0);
  expect(drawn.length).toBeGreaterThan(3);
  const both = Math.min(drawn.length, wanted.length);
  expect(drawn.slice(0, both)).toEqual(wanted.slice(0, both));
  const around = (page: HTMLElement) =>
    ['.lot-table', '.lot-all'].map((part) => (page.querySelector(part)?.cloneNode() as Element | undefined)?.outerHTML);
  expect(around(early)).toEqual(around(list));
  expect(early.querySelector('.lot-head')?.outerHTML).toBe(list.querySelector('.lot-head')?.outerHTML);
  expect(early.querySelector('#opening')).toBeNull();
});

test('the page is left as it is when no lot is still open', async () => {
  vi.stubGlobal('matchMedia', () => ({ matches: false }));
  const page = openedPage();
  const before = page.innerHTML;
  await showFirstRows([], page);
  expect(page.innerHTML).toBe(before);
});
