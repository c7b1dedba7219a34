// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { cents } from '../../src/domain/money/cents.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { HOUR, MINUTE } from '../../src/domain/time/units.ts';
import type { Happening } from '../../src/journal/happening.ts';
import { BOISE } from '../background/invented-saturday.ts';
import { freshBrowser } from '../store/open-test-store.ts';
import { press, setup, type } from './doors.tsx';
import { CLOSE, onNotice, through, type Way } from './scene.ts';

// The popup asks the browser for the page in front; here there is none.
vi.mock('../../src/browser/page-picture.ts', () => ({
  frontPage: async () => null,
  picturePage: async () => ({ ok: false, reason: 'none', message: 'No page.' }),
}));

const AT = (iso: string) => Date.parse(`2026-11-28T${iso}-07:00`);

beforeEach(() => {
  freshBrowser();
  vi.useFakeTimers({ toFake: ['Date'] });
  // Screens measure themselves to draw only the rows in sight; here every row is in sight.
  vi.spyOn(HTMLElement.prototype, 'clientHeight', 'get').mockReturnValue(800);
  vi.spyOn(HTMLElement.prototype, 'offsetHeight', 'get').mockReturnValue(800);
  vi.spyOn(HTMLElement.prototype, 'offsetWidth', 'get').mockReturnValue(1200);
  vi.stubGlobal('matchMedia', () => ({
    matches: false,
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  }));
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe() {}
      unobserve() {}
      disconnect() {}
    },
  );
});
afterEach(() => {
  act(() => render(null, document.body));
  sessionStorage.clear();
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const same = (written: ReadonlyMap<string, unknown>) => {
  const [first] = written.values();
  expect(first).not.toEqual([]);
  for (const [door, entries] of written) expect(entries, door).toEqual(first);
  return first;
};

const placed = (dollars: number): Happening => ({
  kind: 'bid-noted',
  bid: { action: 'proxy-placed', cents: cents(dollars * 100), at: instant(CLOSE - 5 * HOUR), maxBidCents: cents(1) },
});
const price = (dollars: number): Happening => ({
  kind: 'lot-changed',
  set: { priceNow: cents(dollars * 100) },
  clear: [],
  evidence: {},
});

describe('the same act writes the same through every door', () => {
  test('the proxy at the max bid, with one press', async () => {
    const now = CLOSE - 30 * MINUTE;
    const written = await through(
      now,
      [],
      [
        { door: 'Now', does: () => press(/^I placed \$/) },
        { door: 'popup', does: () => press(/^I placed \$/) },
      ],
    );
    written.set('notice', await onNotice(now, [], 'bid'));
    same(written);
  });

  test('a lower proxy is a cut, whatever the button says', async () => {
    const now = CLOSE - 30 * MINUTE;
    const written = await through(
      now,
      [placed(11_000)],
      [
        {
          door: 'Now',
          does: async () => {
            await type('Another proxy', '10,000');
            await press('I cut it to $10,000');
          },
        },
        { door: 'popup', does: () => type('Amount', '10,000', true) },
        { door: 'worksheet', does: () => type('Proxy placed', '10,000', true) },
      ],
    );
    expect(same(written)).toMatchObject([{ kind: 'bid-noted', bid: { action: 'proxy-cut', cents: 1_000_000 } }]);
  });

  test('a raise to the max bid after being outbid', async () => {
    const now = CLOSE - 30 * MINUTE;
    const before = [placed(9000), price(9500)];
    const written = await through(now, before, [
      { door: 'Now', does: () => press(/^I raised it to/) },
      { door: 'popup', does: () => press(/^I raised it to/) },
    ]);
    written.set('notice', await onNotice(now, before, 'bid'));
    expect(same(written)).toMatchObject([{ kind: 'bid-noted', bid: { action: 'proxy-raised' } }]);
  });

  test('a withdrawal that may be of the leading bid is asked about', async () => {
    const now = CLOSE - 30 * MINUTE;
    const ways: readonly Way[] = (['popup', 'worksheet'] as const).map((door) => ({
      door,
      does: async () => {
        await press('Withdraw');
        await press('Yes');
      },
    }));
    expect(same(await through(now, [placed(11_000)], ways))).toMatchObject([
      { kind: 'bid-noted', bid: { action: 'proxy-withdrawn', says: 'accepted' } },
    ]);
  });

  test('a win below a price that was seen is asked about, and kept with the max bid of the close', async () => {
    const now = AT('14:20:00');
    const before = [placed(11_500), price(11_400)];
    const written = await through(now, before, [
      {
        door: 'Now',
        does: async () => {
          await type('Hammer price', '11,000');
          await press('Won at $11,000');
          await press('Yes');
        },
      },
      {
        door: 'popup',
        does: async () => {
          await type('Amount', '11,000');
          await press('Won at this');
          await press('Yes');
        },
      },
      {
        door: 'worksheet',
        does: async () => {
          await type('How it ended', 'w 11000', true);
          await press('Yes');
        },
      },
      {
        door: 'Results',
        does: async () => {
          await type('How 2021 Larkspur ended', 'w 11000', true);
          await press('Yes');
        },
      },
    ]);
    expect(same(written)).toMatchObject([
      { kind: 'result-noted', result: { ended: 'won', hammerCents: 1_100_000 }, at: CLOSE, by: 'proxy' },
    ]);
  });

  test('lost at a price that nobody knows', async () => {
    const now = AT('14:20:00');
    const written = await through(
      now,
      [placed(11_500)],
      [
        {
          door: 'Now',
          does: async () => {
            await type('Hammer price', '');
            await press('Lost');
          },
        },
        { door: 'popup', does: () => press('Lost, price unknown') },
        { door: 'worksheet', does: () => type('How it ended', 'l', true) },
        { door: 'Results', does: () => type('How 2021 Larkspur ended', 'l', true) },
      ],
    );
    written.set('notice', await onNotice(now, [placed(11_500)], 'lost'));
    expect(same(written)).toMatchObject([{ kind: 'result-noted', result: { ended: 'lost' } }]);
  });

  test('a correction keeps the moment, the max bid and who bid of the first', async () => {
    const now = AT('16:00:00');
    const first: Happening = {
      kind: 'result-noted',
      result: { ended: 'lost', hammerCents: cents(1_150_000) },
      at: instant(CLOSE),
      bidder: 'the closer',
      maxBidCents: cents(1_234_500),
    };
    const written = await through(
      now,
      [placed(11_500), first],
      [
        {
          door: 'Now',
          does: async () => {
            await type('Hammer price', '11,500');
            await press('Won at $11,500');
          },
        },
        {
          door: 'popup',
          does: async () => {
            await type('Amount', '11,500');
            await press('Won at this');
          },
        },
        { door: 'worksheet', does: () => type('Correct the result', 'w 11500', true) },
      ],
    );
    expect(same(written)).toMatchObject([
      {
        kind: 'result-noted',
        result: { ended: 'won', hammerCents: 1_150_000 },
        at: CLOSE,
        bidder: 'the closer',
        maxBidCents: 1_234_500,
        corrects: true,
      },
    ]);
  });
});

test('a lot’s zone is that of the store in all of them', () => {
  expect(setup.store.zone).toBe(BOISE);
});
