import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COLUMNS } from '../../../options-page/lots/columns.tsx';
import { planAlerts } from '../../../src/domain/alerts/plan-alerts.ts';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { rushCalendar } from '../../../src/domain/rush/rush-bands.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { alertLots } from '../../../src/views/lots/alert-lots.ts';
import { headroomBadge } from '../../../src/views/lots/headroom-badge.ts';
import { SHOW_KEYS } from '../../../src/views/lots/list-filter.ts';
import { orderLots } from '../../../src/views/lots/list-order.ts';
import { standingsUnder } from '../../../src/views/lots/standing.ts';
import { wordsUnder } from '../../../src/views/lots/words-under.ts';
import { hostileFacts, plainFacts, poisoned } from '../../domain/lot/hostile-facts.ts';
import { inventedSetup } from '../../domain/worksheet/invented-setup.ts';

const SETUP = inventedSetup();
const NOW = instant(Date.UTC(2026, 10, 25, 17));
const SOON = 4 * 60_000;
const closing = (inMs: number) => ({
  instant: instant(NOW + inMs),
  text: '',
  zone: zone('America/Phoenix'),
  how: 'picked' as const,
  doubts: [],
  otherwise: [],
});

function lotOf(number: number, facts: LotFacts): LotState {
  const id = `01K9${String(number).padStart(22, '0')}`;
  return {
    id: id as LotId,
    facts,
    evidence: {},
    source: 'typed',
    addedAt: instant(NOW - 86_400_000),
    changedAt: instant(NOW),
    dropped: false,
    bornIn: id as EntryId,
  };
}

const GOOD = lotOf(1, {
  year: 2020,
  make: 'Larkspur',
  vin: '1ZL3H4C21M0104471',
  venueId: 'ocotillo',
  retail: { likely: 1_800_000 as never },
  close: closing(SOON),
});

/** All that is said of lots at once, on the list, in the plan and on the button. */
function everything(lots: readonly LotState[]) {
  const standings = standingsUnder(SETUP);
  const words = wordsUnder(SETUP, standings, lots);
  const orders = SHOW_KEYS.flatMap((show) =>
    COLUMNS.map(({ key, by }) =>
      orderLots(
        lots,
        { show, sort: key, descending: true, search: '', byVenue: false },
        { works: standings.rough, now: NOW, by },
      ).map(({ id }) => id),
    ),
  );
  const plan = planAlerts({
    lots: alertLots(lots, standings),
    deadlines: [],
    // A lot on which nobody should bid has a reminder only where the rules say so.
    rules: { ...SETUP.alerts, leadMinutes: [60, 15, 5], placedLeadMinutes: [60, 5] },
    calendar: rushCalendar(SETUP.rush, SETUP.store.zone, SETUP.alerts.nearMinutes),
    zone: SETUP.store.zone,
    people: [],
    shownKeys: new Set(),
    now: NOW,
  });
  return {
    standing: new Map(lots.map((lot) => [lot.id, standings.of(lot)])),
    words: new Map(lots.map((lot) => [lot.id, words(lot)])),
    badges: lots.map((lot) => headroomBadge(standings.of(lot))),
    orders,
    plan,
  };
}

const ALONE = everything([GOOD]);

describe('whatever one lot holds, another keeps its row, its figure and its reminder', () => {
  test.each([
    ['slips of the keyboard', plainFacts],
    ['the largest amounts that are kept', hostileFacts],
  ])('%s', (_, made) => {
    fc.assert(
      fc.property(made, fc.boolean(), (facts, dueToo) => {
        const bad = lotOf(2, dueToo ? { ...facts, proxy: undefined, close: closing(SOON) } : facts);
        const { standing, words, orders, plan } = everything([bad, GOOD]);
        expect(standing.get(GOOD.id)).toEqual(ALONE.standing.get(GOOD.id));
        const { todo: _said, ...row } = words.get(GOOD.id) ?? {};
        const { todo: _alone, ...alone } = ALONE.words.get(GOOD.id) ?? {};
        // The same VIN may stand on both, and then the listing is to be checked.
        expect(row).toEqual(alone);
        expect(orders[0]).toContain(GOOD.id);
        const keys = plan.due.flatMap((alert) => alert.keys);
        expect(keys).toEqual(expect.arrayContaining(ALONE.plan.due.flatMap((alert) => [...alert.keys])));
        expect(plan.failed).toBeUndefined();
        if (dueToo) expect(keys.some((key) => key.startsWith(bad.id))).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  test('a mistake of ours in it', () => {
    for (const field of ['retail', 'comps', 'claims', 'recon', 'ceilings', 'venueId', 'titleId'] as const) {
      const bad = lotOf(2, poisoned({ ...GOOD.facts, model: 'Hauler' }, field));
      const { standing, words, plan } = everything([bad, GOOD]);
      expect(standing.get(GOOD.id)).toEqual(ALONE.standing.get(GOOD.id));
      expect(standing.get(bad.id)).toMatchObject({ maxBid: null, why: 'an amount came out as NaN cents' });
      const row = words.get(bad.id);
      expect(row?.close?.instant).toBe(NOW + SOON);
      expect(row?.todo.words).toContain('Can’t be worked out: an amount came out as NaN cents');
      expect(row?.maxBid.words).toBe('can’t be worked out');
      const said = plan.due.map(({ title, body }) => `${title} ${body}`).join(' ');
      expect(said).toContain('Can’t be worked out: an amount came out as NaN cents.');
      expect(said).toContain('Stop at $');
    }
  });
});

test('a low end of nothing is said on the row and in the notice, with the close as ever', () => {
  const bad = lotOf(2, { ...GOOD.facts, retail: { low: 0 as never, likely: 1_800_000 as never } });
  const { words, plan } = everything([bad]);
  expect(words.get(bad.id)?.todo).toEqual({
    words: 'Can’t be worked out: the low end of retail is $0',
    as: 'act',
    act: 'sheet',
  });
  expect(plan.due[0]?.title).toContain('closes in 4 min');
  expect(plan.due[0]?.body).toContain('Can’t be worked out: the low end of retail is $0.');
});

test('a setup that can’t be used costs the figures and no close', () => {
  const broken = { ...SETUP, carrying: undefined as never };
  const standings = standingsUnder(broken);
  expect(standings.of(GOOD).why).toBeDefined();
  expect(alertLots([GOOD], standings)[0]?.stop).toMatch(/^Can’t be worked out: /);
});
