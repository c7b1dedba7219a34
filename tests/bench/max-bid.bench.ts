import type { Deal } from '../../src/domain/deal/deal.ts';
import { maxBid } from '../../src/domain/deal/max-bid.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { holeDeal } from '../reference/worked-deals.ts';
import { type BenchRow, timeBoth } from './run-bench.ts';
import { maxBidSheet } from './spreadsheet-max-bid.ts';

const LOTS = 10_000;
/** The spreadsheet takes milliseconds a lot, so it is timed on fewer and its time is scaled up. */
const SHEET_LOTS = 60;
const LEAST_RATIO = 20;
const MOST_GROWTH = 1.5;

/** Two fee tables with percent and flat bands, a title, six costs, and 10,000 different retail and recon figures. */
function lots(count: number): Deal[] {
  return Array.from({ length: count }, (_, i) => {
    const deal = holeDeal(14_000 + ((i * 37) % 4000));
    return {
      ...deal,
      costs: deal.costs.map((line) =>
        line.kind === 'recon' ? { ...line, cents: cents(60_000 + ((i * 7919) % 90_000)) } : line,
      ),
    };
  });
}

/** Max bids with everything that explains them, against a spreadsheet; and ten times the lots against the lots. */
export async function run(): Promise<BenchRow[]> {
  const deals = lots(LOTS);
  const many = lots(10 * LOTS);
  // Once round before the clock starts, so that neither side is timed while its code is still being compiled.
  timeOurs(deals);
  const ours = best(5, () => timeOurs(deals));
  const { ours: tenfold, rival: tenTimes } = await timeBoth(
    () => timeOurs(many),
    () => {
      for (let i = 0; i < 10; i++) timeOurs(deals);
    },
  );
  const rival = (timeSheet(deals.slice(0, SHEET_LOTS)) / SHEET_LOTS) * LOTS;
  const ratio = rival / ours;
  const growth = tenfold / tenTimes;
  return [
    {
      what: `${LOTS.toLocaleString('en-US')} max bids with two fee tables, against a spreadsheet (timed on ${SHEET_LOTS} lots, scaled)`,
      ours,
      rival,
      ratio,
      limit: `at least ${LEAST_RATIO}`,
      ok: ratio >= LEAST_RATIO,
    },
    {
      what: `${(10 * LOTS).toLocaleString('en-US')} max bids, against ten times the time of ${LOTS.toLocaleString('en-US')}`,
      ours: tenfold,
      rival: tenTimes,
      ratio: growth,
      limit: `at most ${MOST_GROWTH}`,
      ok: growth <= MOST_GROWTH,
    },
  ];
}

function timeOurs(deals: readonly Deal[]): number {
  const start = performance.now();
  let found = 0;
  for (const deal of deals) if (maxBid(deal).maxBid !== null) found++;
  const spent = performance.now() - start;
  if (found !== deals.length) throw new Error('every lot of the bench has a max bid');
  return spent;
}

/** @throws Error when the spreadsheet and ours differ: then there is nothing to compare */
function timeSheet(deals: readonly Deal[]): number {
  const first = deals[0];
  if (first === undefined) throw new Error('the bench needs lots');
  const sheet = maxBidSheet(first, Math.max(...deals.map((deal) => (deal.retail * deal.titleKeeps) / 1e6)));
  sheet.maxBidOf(first);
  const start = performance.now();
  const answers = deals.map((deal) => sheet.maxBidOf(deal));
  const spent = performance.now() - start;
  sheet.close();
  for (const [i, deal] of deals.entries()) {
    const expected = maxBid(deal).maxBid;
    if (answers[i] !== expected) throw new Error(`lot ${i}: the sheet says ${answers[i]}, ours ${expected}`);
  }
  return spent;
}

function best(rounds: number, time: () => number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < rounds; i++) least = Math.min(least, time());
  return least;
}
