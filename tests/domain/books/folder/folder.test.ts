import { describe, expect, test } from 'vitest';
import type { CostKind } from '../../../../src/domain/accounts/cost-kind.ts';
import { expectedPurchase } from '../../../../src/domain/books/folder/expected.ts';
import { type FolderSource, purchaseFolder } from '../../../../src/domain/books/folder/folder.ts';
import { breakdownAt } from '../../../../src/domain/deal/price-breakdown.ts';
import { worksheetOf } from '../../../../src/domain/worksheet/worksheet-of.ts';
import { CONTEXT, day, dollars, FACTS } from '../folder-test-car.ts';
import { lotNumber } from '../random-car.ts';

const HAMMER = dollars(9725);
const expected = expectedPurchase(FACTS, CONTEXT, HAMMER);
const cost = (kind: CostKind, label: string, amount: number) => ({
  key: `${kind}/${label}`,
  cost: kind,
  label,
  cents: dollars(amount),
  date: day('2026-11-28'),
  paid: 'owed' as const,
});
const source: FolderSource = {
  lot: lotNumber(1),
  facts: FACTS,
  won: { hammer: HAMMER, date: day('2026-11-28') },
  expected,
  costs: [],
  payments: [],
  floor: [],
  papers: [],
  notBilled: dollars(9725 + 450 + 45),
};
const lineOf = (folder: ReturnType<typeof purchaseFolder>, label: string) =>
  folder.lines.find((line) => line.label === label);

describe('what was expected', () => {
  test('is the worksheet at the hammer price, line by line, with where each comes from', () => {
    const worksheet = worksheetOf(FACTS, CONTEXT);
    if (!worksheet.ok) throw new Error(worksheet.message);
    const { steps, financed } = breakdownAt(worksheet.value.deal, HAMMER);
    const step = (group: string) => steps.filter((each) => each.group === group).map(({ cents }) => cents);
    const line = (kind: CostKind) => expected.lines.filter((each) => each.cost === kind).map(({ cents }) => cents);
    expect(line('hammer')).toEqual([HAMMER]);
    expect(line('fee')).toEqual([...step('fee'), ...step('charge')]);
    expect(line('transport')).toEqual(step('transport'));
    expect(line('recon')).toEqual(step('recon'));
    expect(line('interest')).toEqual(step('interest'));
    expect(expected.financed).toBe(financed);
    expect(expected.lines.find(({ label }) => label === 'Buy fee')?.from).toBe(
      '“Saguaro buyer fees”, from $8,000: $450',
    );
    const all = expected.lines.reduce((sum, each) => sum + each.cents, 0);
    expect(expected.gross).toBe(dollars(18_000) - all);
  });

  test('is still said as far as it goes when nobody had said what the car would bring', () => {
    const { retail: _, ...bare } = FACTS;
    const partly = expectedPurchase(bare, CONTEXT, HAMMER);
    expect(partly).toMatchObject({ retail: null, gross: null, financed: null });
    expect(partly.lines.map(({ label }) => label)).toEqual([
      'Hammer price',
      'Buy fee',
      'Gate pass',
      'Tires',
      'Transport',
    ]);
    expect(partly.problems).toHaveLength(1);
    const nowhere = expectedPurchase({ ...bare, venueId: 'gone', venueName: 'Gone' }, CONTEXT, HAMMER);
    expect(nowhere.lines).toHaveLength(1);
    expect(nowhere.problems[0]).toMatch(/venue is not in Setup/);
  });
});

describe('a folder', () => {
  test('explains every difference, and asks for a look only where the price list or the result says otherwise', () => {
    const folder = purchaseFolder(
      {
        ...source,
        costs: [
          cost('hammer', 'Vehicle', 9725),
          cost('fee', 'Buy fee', 475),
          cost('fee', 'Gate pass', 45),
          cost('fee', 'Storage', 60),
          cost('transport', 'Haul from Arizona', 845),
          cost('recon', 'Tires', 1000),
        ],
      },
      day('2026-12-01'),
    );
    expect(lineOf(folder, 'Hammer price')).toMatchObject({ difference: 0, look: false, why: 'As expected.' });
    expect(lineOf(folder, 'Buy fee')).toMatchObject({
      difference: 2500,
      look: true,
      why: '$25 more than the fee schedule: “Saguaro buyer fees”, from $8,000: $450.',
    });
    expect(lineOf(folder, 'Gate pass')).toMatchObject({ difference: 0, look: false });
    expect(lineOf(folder, 'Storage')).toMatchObject({ expected: null, look: true });
    expect(lineOf(folder, 'Transport')).toMatchObject({ difference: 6500, look: false });
    expect(lineOf(folder, 'Tires')?.why).toMatch(/above the range you gave, \$420 to \$900/);
    expect(folder.look).toBe(true);
    expect(folder.actualCents).toBe(dollars(9725 + 475 + 45 + 60 + 845 + 1000));
  });

  test('says what is owed after a part payment and the lender, and what the lender still has in it', () => {
    const folder = purchaseFolder(
      {
        ...source,
        costs: [cost('hammer', 'Vehicle', 9725), cost('fee', 'Buy fee', 450)],
        payments: [{ key: 'p', cents: dollars(300), date: day('2026-11-30') }],
        floor: [
          { key: 'd', move: 'draw', cents: dollars(9725), date: day('2026-11-29') },
          { key: 'c', move: 'payoff', cents: dollars(972.5), date: day('2027-01-28') },
        ],
      },
      day('2026-12-01'),
    );
    expect(folder).toMatchObject({ stage: 'in-stock', owed: dollars(150), floorOwed: dollars(8752.5) });
  });

  test('names what is missing, and no longer once it is there', () => {
    const bare = purchaseFolder(source, day('2026-12-08'));
    expect(bare.missing).toEqual([
      'Auction invoice',
      'Payment',
      'Title (10 days since the win)',
      'Bill of sale',
      'Odometer statement',
      'Transport receipt',
      'Transport bill',
    ]);
    const paper = (name: 'title' | 'bill-of-sale' | 'odometer-statement' | 'transport-receipt') => ({
      lot: source.lot,
      paper: name,
      date: day('2026-12-01'),
    });
    const full = purchaseFolder(
      {
        ...source,
        costs: [cost('hammer', 'Vehicle', 9725), cost('transport', 'Haul', 780)],
        payments: [{ key: 'p', cents: dollars(10_505), date: day('2026-11-30') }],
        papers: [paper('title'), paper('bill-of-sale'), paper('odometer-statement'), paper('transport-receipt')],
      },
      day('2026-12-08'),
    );
    expect(full.missing).toEqual([]);
  });

  test('that was undone owes what nobody took back, misses nothing, and has no gross', () => {
    const folder = purchaseFolder(
      {
        ...source,
        costs: [
          cost('hammer', 'Vehicle', 9725),
          cost('fee', 'Buy fee', 450),
          { ...cost('transport', 'Haul', 780), paid: 'bank' },
        ],
        payments: [{ key: 'p', cents: dollars(10_175), date: day('2026-11-30') }],
        undoneOn: day('2026-12-05'),
        outcome: { lot: source.lot, date: day('2026-12-20'), priceCents: dollars(18_000), buyer: 'retail' },
      },
      day('2026-12-24'),
    );
    expect(folder).toMatchObject({ stage: 'undone', owed: dollars(-10_175), missing: [], gross: null });
  });
});
