import { describe, expect, test } from 'vitest';
import type { Deal } from '../../../src/domain/deal/deal.ts';
import { maxBid, maxBidOnly } from '../../../src/domain/deal/max-bid.ts';
import { sensitivityOf } from '../../../src/domain/deal/sensitivity.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { dollars, flatBandsDeal, holeDeal } from '../../reference/worked-deals.ts';

const of = (deal: Deal, input: string) => sensitivityOf(deal).find((one) => one.input === input);

describe('what moves the max bid', () => {
  test('a hundred dollars more or less of each input is a new search, on the grid', () => {
    // 8,575 leaves 19.50: 100 more of retail is 119.50, worth four steps of 25 at 25.50 each.
    expect(of(flatBandsDeal, 'retail')).toMatchObject({
      label: 'Expected retail',
      cents: dollars(12_000),
      up: { by: dollars(100), maxBid: dollars(8675), change: dollars(100) },
      down: { by: dollars(-100), maxBid: dollars(8475), change: dollars(-100) },
    });
    expect(of(flatBandsDeal, 'least-dollars')?.up.maxBid).toBe(dollars(8475));
    expect(of(flatBandsDeal, 'recon')?.up.maxBid).toBe(dollars(8475));
    expect(of(flatBandsDeal, 'transport')?.down.maxBid).toBe(dollars(8675));
    expect(of(flatBandsDeal, 'charge')).toMatchObject({
      cents: 0,
      up: { maxBid: dollars(8475) },
      down: { by: 0, change: 0 },
    });
  });

  test('every group of costs is moved once, whatever the number of its lines', () => {
    const inputs = sensitivityOf(holeDeal(18_000)).map((one) => one.input);
    expect([...inputs].sort()).toEqual(
      ['charge', 'least-dollars', 'pack', 'recon', 'retail', 'selling', 'transport'].sort(),
    );
  });

  test('an input never goes below nothing', () => {
    const cheap: Deal = {
      ...flatBandsDeal,
      costs: [{ kind: 'pack', label: 'Pack', cents: dollars(30) }],
    };
    expect(of(cheap, 'pack')?.down.by).toBe(dollars(-30));
  });

  test('an input with a range also moves to its ends, and the largest effect comes first', () => {
    const deal: Deal = {
      ...flatBandsDeal,
      costs: [
        { kind: 'pack', label: 'Pack', cents: dollars(100) },
        { kind: 'recon', label: 'Tires', cents: dollars(500), range: { low: dollars(200), high: dollars(900) } },
        { kind: 'recon', label: 'Glass', cents: dollars(500), range: { low: dollars(100), high: dollars(800) } },
      ],
    };
    const first = sensitivityOf(deal)[0];
    // Two doubts add as the root of the sum of squares: 300 and 400 below make 500; 400 and 300 above make 500.
    expect(first).toMatchObject({ input: 'recon', atLow: { by: dollars(-500) }, atHigh: { by: dollars(500) } });
  });

  test('the rules that decide where to stop are asked about the changed deal', () => {
    const capped = sensitivityOf(flatBandsDeal, (deal) =>
      maxBidOnly(deal, { riskCap: (price) => price <= deal.retail / 2 }),
    );
    expect(capped.find((one) => one.input === 'retail')?.up).toMatchObject({
      maxBid: dollars(6050),
      change: dollars(50),
    });
  });

  test('agrees with the max bid of the changed deal', () => {
    const dearer = { ...flatBandsDeal, charges: [{ label: 'Gate', cents: cents(10_000) }] };
    expect(of(flatBandsDeal, 'charge')?.up.maxBid).toBe(maxBid(dearer).maxBid);
  });
});
