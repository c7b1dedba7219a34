import { describe, expect, test } from 'vitest';
import { type Biases, inventedStore } from '../../../../scripts/learn/invented-store.ts';
import { CORRECTION_IDS, type CorrectionId } from '../../../../src/domain/correction/corrections.ts';
import { type CorrectionEvidence, evidenceOf } from '../../../../src/domain/learn/corrections/evidence.ts';
import { type Figure, findingOf } from '../../../../src/domain/learn/corrections/finding.ts';
import { type ReplayedLot, replayOf, replaySums } from '../../../../src/domain/learn/corrections/replay.ts';
import { instant } from '../../../../src/domain/time/instant.ts';
import { DAY } from '../../../../src/domain/time/units.ts';

const learnt = (biases: Biases, seed: number, perWeek = 8) => {
  const store = inventedStore(biases, seed, perWeek);
  return { ...store, evidence: evidenceOf(store.lots, [], store.now) };
};
const ran = <Result>(work: Generator<unknown, Result>): Result => {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value as Result;
  }
};
const replayed = (lots: Parameters<typeof replayOf>[0], evidence: CorrectionEvidence, ids: readonly CorrectionId[]) =>
  ran(replayOf(lots, evidence, ids));

const WRONG: Biases = {
  retail: 0.95,
  spread: 1.5,
  recon: { Body: 1.4, Tires: 0.75 },
  median: 75,
  canceled: 0.12,
  miles: 0.06,
  years: 0.14,
  asking: 0.94,
};

describe('a store of two years whose figures are wrong in known ways', () => {
  const { evidence, setup, now } = learnt(WRONG, 3, 12);
  const figure = (id: CorrectionId, label?: string): Figure => {
    const found = findingOf(id, { evidence, setup, now }).figures.find(
      (one) => label === undefined || one.label === label,
    );
    if (found === undefined) throw new Error(`no figure of ${id}`);
    return found;
  };

  test.each([
    ['retailLevel', undefined, WRONG.retail],
    ['retailSpread', undefined, WRONG.spread],
    ['recon', 'Body', 1.4],
    ['recon', 'Tires', 0.75],
    ['days', undefined, WRONG.median],
    ['canceled', undefined, WRONG.canceled],
    ['slopes', '10,000 more miles', WRONG.miles],
    ['slopes', 'One year older', WRONG.years],
    ['asking', undefined, WRONG.asking],
  ] as const)('has %s (%s) found on the right side, in a range that holds the truth', (id, label, truth = 0) => {
    const { learned, without } = figure(id, label);
    expect(Math.sign(learned.value - without)).toBe(Math.sign(truth - without));
    expect(learned.clear).toBe(true);
    expect(learned.low).toBeLessThan(truth);
    expect(learned.high).toBeGreaterThan(truth);
  });

  test('has the line that is right left alone', () => {
    const { learned } = figure('recon', 'Brakes');
    expect(learned.clear).toBe(false);
    expect(Math.abs(learned.value - 1)).toBeLessThan(0.1);
  });
});

test('in stores without any bias nothing is found, but for one in twenty', () => {
  const found = Array.from({ length: 5 }, (_, i) => {
    const { evidence, setup, now } = learnt({}, 100 + i, 5);
    return CORRECTION_IDS.filter((id) => findingOf(id, { evidence, setup, now }).clear);
  });
  expect(found.filter((ids) => ids.length > 0).length).toBeLessThanOrEqual(1);
});

describe('a store that wins what it rates too high', () => {
  const { evidence, setup, now, lots } = learnt({ error: 0.08 }, 5);

  test('is told so by the correction for won cars, and not that its estimates are too high as such', () => {
    expect(findingOf('win', { evidence, setup, now }).clear).toBe(true);
    expect(findingOf('retailLevel', { evidence, setup, now })).toMatchObject({ clear: false, better: 'win' });
  });

  test('has nothing taken off twice: with retail corrected, little is left over for won cars', () => {
    const alone = findingOf('win', { evidence, setup, now }).value.win?.haircutPpm ?? 0;
    const corrections = findingOf('retailLevel', { evidence, setup, now }).value;
    const beside = findingOf('win', { evidence, setup: { ...setup, corrections }, now }).value.win?.haircutPpm ?? 0;
    expect(alone).toBeGreaterThan(20_000);
    expect(beside).toBeLessThan(alone / 2);
  });

  test('has a correction measured on plain forecasts: switching it on does not make it vanish', () => {
    const plain = findingOf('recon', { evidence, setup, now });
    const switched = { ...setup, corrections: { ...plain.value, ...findingOf('win', { evidence, setup, now }).value } };
    expect(findingOf('win', { evidence, setup: switched, now }).figures[0]?.learned.value).toBeGreaterThan(0.02);
    expect(lots.length).toBe(832);
  });
});

describe('a replay', () => {
  const { lots, evidence, now } = learnt({ recon: { Body: 1.6 }, error: 0.06 }, 9, 4);
  const all = replayed(lots, evidence, ['win', 'recon']);
  const line = ({ past, wasOn, before, after, outcome }: ReplayedLot) => ({
    lot: past.lot,
    wasOn,
    before,
    after,
    outcome,
  });

  test('begins without: no lot is touched before there was evidence enough', () => {
    const first = all.filter(({ wasOn }) => !wasOn);
    expect(first.length).toBeGreaterThan(0);
    expect(first.every(({ before, after, outcome }) => before === after && outcome === 'same')).toBe(true);
  });

  test('sees nothing that was written down later: facts planted in the future change no line before them', () => {
    const whole = replayed(lots, evidence, ['win', 'recon', 'days', 'retailLevel']);
    for (const week of [40]) {
      const cut = instant(lots[0] === undefined ? 0 : lots[0].past.forecast.at + week * 7 * DAY);
      const early = lots.filter(({ past }) => past.forecast.at < cut);
      // As the journal stood then: of the cars that had been bought, nothing that came later.
      const asKnown = early.map((lot) => {
        const { sold, soldOn, billed, canceled, ended } = lot.known;
        const isKnown = (at: number | undefined) => at !== undefined && at < cut;
        const { bought, at } = lot.past.happened;
        const stands = { sold: false, sale: null, lost: null, days: Math.round((cut - at) / DAY) };
        const happened = {
          ...lot.past.happened,
          canceled: isKnown(canceled),
          bought: bought === null || isKnown(sold) || isKnown(canceled) ? bought : { ...bought, ...stands },
        };
        return {
          past: { ...lot.past, happened },
          known: {
            ended,
            ...(isKnown(sold) && { sold, soldOn }),
            ...(isKnown(billed) && { billed }),
            ...(isKnown(canceled) && { canceled }),
          },
        };
      });
      const then = replayed(asKnown, evidenceOf(asKnown, [], cut), ['win', 'recon', 'days', 'retailLevel']);
      const later = whole.slice(0, early.length);
      expect(later.map(line)).toEqual(then.map(line));
    }
  });

  test('of wild outcomes planted after the last sale changes nothing at all', () => {
    const wild = lots.map((lot) => ({
      ...lot,
      known: { ...lot.known, sold: instant(now + DAY), billed: instant(now + DAY) },
    }));
    const none = replayed(wild, evidenceOf(wild, [], now), ['win', 'recon', 'retailLevel', 'retailSpread']);
    expect(none.every(({ wasOn }) => !wasOn)).toBe(true);
  });

  test('says what would not have been bought, what might have been won, and adds up', () => {
    const sums = replaySums(all);
    expect(sums.on).toBe(all.filter(({ wasOn }) => wasOn).length);
    expect(sums.notBought.length).toBeGreaterThan(0);
    for (const { past, after, before } of sums.notBought) {
      expect(past.happened.ended).toBe('won');
      expect(after ?? -1).toBeLessThan(past.happened.hammer ?? 0);
      expect(before ?? -1).toBeGreaterThanOrEqual(past.happened.hammer ?? 0);
    }
    for (const { past, after } of sums.maybeWon) expect(after).toBeGreaterThan(past.happened.hammer ?? 0);
    const lost = sums.notBought.reduce((sum, { profit }) => sum + (profit ?? 0), 0);
    expect(sums.profitKept).toBe(sums.profit - lost);
  });

  test('leaves a lost lot at an unknown price unknown where the bid would have been higher', () => {
    const higher = inventedStore({ recon: { Body: 0.4, Tires: 0.4, Brakes: 0.4 } }, 4, 6);
    const unsaid = higher.lots.map(({ past, known }) => ({
      known,
      past: past.happened.ended === 'lost' ? { ...past, happened: { ...past.happened, hammer: null } } : past,
    }));
    const sums = replaySums(replayed(unsaid, evidenceOf(unsaid, [], higher.now), ['recon']));
    expect(sums.maybeWon).toEqual([]);
    expect(sums.unknown).toBeGreaterThan(0);
  });
});
