import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planCommand } from '../../scripts/plan/plan-command.ts';
import { ok, refuse } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';

const SETUP = readFileSync('tests/fixtures/setup-example.json', 'utf8');
const HEAD = 'Year,Make,Model,Venue,Closes,Price now,Retail,Title\n';
/** Lots an hour apart. */
const lots = (count: number) =>
  HEAD +
  Array.from(
    { length: count },
    (_, i) =>
      `2019,Alderman,Cargo ${i},Ocotillo Truck Sale,2026-11-28T${10 + i}:00-07:00,4000,${15_000 + 400 * i},Clean\n`,
  ).join('');
const closings = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    venueId: 'ocotillo',
    titleId: 'clean',
    zeroProfitCents: 1_000_000,
    stepCents: 2_500,
    ended: 'lost',
    priceCents: 900_000 + 10_000 * (i % 9),
  }));

async function call(files: { lots?: string; purse?: unknown; setup?: string }, flags = ['--json']) {
  const warned: string[] = [];
  let out = '';
  const { purse = { cashCents: 2_000_000 } } = files;
  const known: Readonly<Record<string, string>> = {
    lots: files.lots ?? lots(6),
    setup: files.setup ?? SETUP,
    purse: typeof purse === 'string' ? purse : JSON.stringify(purse),
  };
  const code = await planCommand(['lots', '--setup', 'setup', '--purse', 'purse', ...flags], {
    read(path) {
      const text = known[path];
      return text === undefined ? refuse('not-found', `There is no file ${path}.`) : ok(new TextEncoder().encode(text));
    },
    out: (text) => {
      out += text;
    },
    warn: (line) => warned.push(line),
    now: instant(Date.parse('2026-11-25T12:00:00Z')),
  });
  return { code, out, warned: warned.join('\n') };
}

describe('the plan command', () => {
  test('writes one object a lot in closing order, with its planned bid, chance and cash', async () => {
    const { code, out, warned } = await call({ purse: { cashCents: 1_300_000, closings: closings(40) } });
    expect([code, warned]).toEqual([0, '']);
    const rows = JSON.parse(out);
    expect(rows.map((row: { car: string }) => row.car)).toEqual(
      Array.from({ length: 6 }, (_, i) => `2019 Alderman Cargo ${i}`),
    );
    for (const row of rows) {
      expect(row).toMatchObject({ vin: null, closings: 40, fitsBesideProxies: true, problems: [] });
      expect(row.cash ?? 0).toBeLessThanOrEqual(13_000);
      expect(row.plannedBid ?? 0).toBeLessThanOrEqual(row.maxBid);
      expect(row.chance).toBeGreaterThan(0);
      expect(row.chanceWords).toMatch(/^(?:about|less|more)/);
    }
    expect(rows.some((row: { plannedBid: number; maxBid: number }) => row.plannedBid < row.maxBid)).toBe(true);
  });

  test('writes a table with what the whole plan comes to', async () => {
    const { out } = await call({ purse: { cashCents: 1_300_000, closings: closings(40) } }, []);
    expect(out).toMatch(/^Row +VIN +Car +Closes \(UTC\) +Max bid +Planned bid/);
    expect(out).toMatch(/\nExpected: \d\.\d cars, \$\d/);
    expect(out).toMatch(/Another \$1,000 of cash is worth \$\d+/);
  });

  test('without closings keeps the max bids and says that it does not know enough', async () => {
    const { code, out, warned } = await call({});
    expect(code).toBe(0);
    expect(JSON.parse(out)[0]).toMatchObject({ reason: 'few-closings', chance: null });
    expect(warned).toMatch(/6 lots are of a group with fewer than 20 closings/);
  });

  test.each([
    ['{"cashCents": 30000,', /The purse purse can’t be used: It is not valid JSON/],
    ['[]', /It does not hold a purse/],
    [{}, /cashCents.*missing|missing.*cashCents/i],
    [{ cashCents: -125_000 }, /at least/],
    [{ cashCents: 'about thirty' }, /cash/i],
    // Cents or dollars? Nobody knows.
    [{ cashCents: '3000000' }, /cash/i],
    [{ cashCents: 3_000_000, places: 2.5 }, /whole/i],
    [{ cashCents: 3_000_000, places: -2 }, /at least/],
    [{ cashCents: 3_000_000, until: '2026-11-01' }, /last day is over/],
    [{ cashCents: 3_000_000, cash: 4 }, /not known/],
  ])('refuses the purse %j in a sentence, and plans nothing', async (purse, sentence) => {
    const { code, out, warned } = await call({ purse });
    expect([code, out]).toEqual([1, '']);
    expect(warned).toMatch(sentence);
  });

  test('goes on with the other rows beside one that has no close, no venue, or stands twice', async () => {
    const vin = '1ZLWV2AC1M1106317';
    const more = [
      `2020,Larkspur,Hauler,Ocotillo Truck Sale,,4000,16000,Clean,\n`,
      `2020,Larkspur,Hauler,Nowhere,2026-11-28T20:00-07:00,4000,16000,Clean,\n`,
      `2021,Larkspur,Hauler 250,Ocotillo Truck Sale,2026-11-28T21:00-07:00,4000,16000,Clean,${vin}\n`,
      `2021,Larkspur,Hauler 250,Ocotillo Truck Sale,2026-11-28T22:00-07:00,4000,16000,Clean,${vin}\n`,
    ];
    const table = lots(2).replace('Title\n', 'Title,VIN\n').replaceAll('Clean\n', 'Clean,\n') + more.join('');
    const { code, out, warned } = await call({ lots: table, purse: { cashCents: 9_000_000 } });
    expect(code).toBe(0);
    const rows: { row: number; reason: string; plannedBid: number | null }[] = JSON.parse(out);
    expect(rows.map(({ row, reason }) => [row, reason])).toEqual([
      [2, 'few-closings'],
      [3, 'few-closings'],
      [5, 'no-max-bid'],
      [6, 'few-closings'],
      [4, 'no-close'],
    ]);
    expect(warned).toMatch(/has no close, so it has no place in the plan/);
    expect(warned).toMatch(/Row 7 has the VIN of row 6: one car/);
  });

  test('says what it takes for granted: a title, a zone, a floor line that the setup has no terms for', async () => {
    const table = lots(2).replace(',Clean\n', ',\n').replace('T11:00-07:00', ' 11:00');
    const { carrying, ...setup } = JSON.parse(SETUP);
    const { floorPlan: _, ...withoutPlan } = carrying;
    const { code, warned } = await call({
      lots: table,
      setup: JSON.stringify({ ...setup, carrying: withoutPlan }),
      purse: { cashCents: 9_000_000, lineCents: 1_000_000 },
    });
    expect(code).toBe(0);
    expect(warned).toMatch(/No title in row 2: priced at full retail, and planned from own cash only\./);
    expect(warned).toMatch(/No zone at the close in row 3: the venue’s was taken\./);
    expect(warned).toMatch(/a floor line and the setup has no floor plan: every car is planned from cash/);
  });

  test('reads an amount that is written as dollars, and says so', async () => {
    const { code, warned, out } = await call({ purse: { cashCents: '$13,000.00', moves: [], closings: closings(40) } });
    expect(code).toBe(0);
    expect(warned).toBe('Purse, cashCents: “$13,000.00” is read as $13,000.');
    expect(out).toBe((await call({ purse: { cashCents: 1_300_000, closings: closings(40) } })).out);
  });

  test('names what a command lacks', async () => {
    const around = { read: () => refuse('x', 'x'), out: () => undefined, warn: () => undefined, now: instant(0) };
    expect(await planCommand(['lots', '--setup', 'setup'], around)).toBe(1);
    expect(await planCommand(['--help'], around)).toBe(0);
  });
});
