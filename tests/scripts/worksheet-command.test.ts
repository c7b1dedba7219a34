import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { worksheetCommand } from '../../scripts/worksheet/worksheet-command.ts';
import { ok, refuse } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';

const LOTS = 'tests/fixtures/lots-example.csv';
const SETUP = 'tests/fixtures/setup-example.json';
const setupText = readFileSync(SETUP, 'utf8');

async function call(
  flags: readonly string[],
  files: Readonly<Record<string, string>> = {},
  environment: Readonly<Record<string, string>> = {},
) {
  const warned: string[] = [];
  let out = '';
  const known: Readonly<Record<string, string>> = {
    [LOTS]: readFileSync(LOTS, 'utf8'),
    [SETUP]: setupText,
    ...files,
  };
  const code = await worksheetCommand(flags, {
    read(path) {
      const text = known[path];
      return text === undefined ? refuse('not-found', `There is no file ${path}.`) : ok(new TextEncoder().encode(text));
    },
    out: (text) => {
      out += text;
    },
    warn: (line) => warned.push(line),
    now: instant(Date.parse('2026-11-25T12:00:00Z')),
    environment,
  });
  return { code, out, warned: warned.join('\n') };
}

async function answers(csv: string, setup = setupText) {
  const { code, out, warned } = await call(['-', '--setup', SETUP, '--json'], { '-': csv, [SETUP]: setup });
  expect(code).toBe(0);
  return { lots: JSON.parse(out), warned };
}

const HEAD = 'VIN,Venue,Closes,Price now,Retail,Recon,Title,Transport\n';

describe('the worksheet command', () => {
  test('writes one object a row whose lines add up to the max bid, to the cent', async () => {
    const { code, out } = await call([LOTS, '--setup', SETUP, '--json']);
    expect(code).toBe(0);
    const lots = JSON.parse(out);
    expect(lots.map((lot: { row: number }) => lot.row)).toEqual([2, 3, 4]);
    for (const lot of lots) {
      const sum = lot.lines.reduce(
        (total: number, line: { amount: number }) => total + Math.round(line.amount * 100),
        0,
      );
      expect(sum).toBe(Math.round(lot.maxBid * 100));
      expect(lot.problems).toEqual([]);
    }
    expect(lots[0]).toMatchObject({ vin: '1ZLWV2AC1M1106317', limitedBy: 'least-share', funding: 'floor' });
    expect(lots[1]).toMatchObject({ vin: null, car: '2019 Alderman Cargo 19', funding: 'cash', financed: 0 });
  });

  test('gives all objects the same keys, worked out or not', async () => {
    const { lots } = await answers(`${HEAD}a,Ocotillo Truck Sale,,9000,15000,,Clean,\nb,Nowhere,,9000,15000,,Clean,\n`);
    const keys = lots.map((lot: object) => Object.keys(lot).sort());
    expect(keys[1]).toEqual(keys[0]);
  });

  test('writes a table whose figures line up', async () => {
    const { out } = await call([LOTS, '--setup', SETUP]);
    const lines = out.trimEnd().split('\n');
    const end = (lines[0] ?? '').indexOf('Max bid') + 'Max bid'.length;
    for (const line of lines.slice(1, 4)) expect(line.slice(0, end)).toMatch(/\$[\d,]+$/);
    expect(lines[1]).toContain('Ocotillo Truck Sale');
    expect(lines[4] ?? '').toBe('');
  });

  test('reports a row it can’t price and works the others out', async () => {
    const csv = `${HEAD}1ZLWV2AC1M1106317,Nowhere,,9000,,,Clean,\n1ZLWV2AC1M1106317,Foxglove Fleet Lanes,,9000,15000,,Clean,\n`;
    const { lots, warned } = await answers(csv);
    expect(lots[0].maxBid).toBeNull();
    expect(lots[0].problems.map((one: { reason: string }) => one.reason)).toEqual(['no-retail', 'unknown-venue']);
    expect(lots[1].maxBid).toBeGreaterThan(0);
    expect(warned).toContain('Row 2 (1ZLWV2AC1M1106317): There is no retail estimate.');
  });

  test('never prices a car as clean whose title it could not read', async () => {
    const { lots } = await answers(`${HEAD}1ZLWV2AC1M1106317,Foxglove Fleet Lanes,,9000,15000,,Soaked twice,\n`);
    expect(lots[0].maxBid).toBeNull();
    expect(lots[0].problems[0]).toMatchObject({ reason: 'unknown-title' });
  });

  test.each([
    ['recon', `${HEAD}1ZLWV2AC1M1106317,Foxglove Fleet Lanes,,9000,15000,ask Lee,Clean,\n`],
    ['transport', `${HEAD}1ZLWV2AC1M1106317,Foxglove Fleet Lanes,,9000,15000,,Clean,call the yard\n`],
  ])('has no max bid where it could not read %s, rather than one from the standing figure', async (field, csv) => {
    const { lots } = await answers(csv);
    expect(lots[0].maxBid).toBeNull();
    expect(lots[0].problems).toEqual([expect.objectContaining({ reason: 'unread-cell' })]);
    expect(lots[0].problems[0].message).toContain(`for ${field} could not be read`);
  });

  test('takes the fees of the day of the sale at the venue', async () => {
    const row = (date: string) => `1ZLWV2AC1M1106317,Ocotillo Truck Sale,${date} 2:00 PM,,15000,,Clean,\n`;
    const { lots } = await answers(HEAD + row('12/31/2025') + row('01/01/2026'));
    const gate = (lot: { lines: { key: string; amount: number }[] }) =>
      lot.lines.find((l) => l.key === 'fee-0')?.amount;
    expect([gate(lots[0]), gate(lots[1])]).toEqual([-275, -300]);
  });

  test('says below the table what was assumed, each thing once, and what leaves a cost out beside the row too', async () => {
    const rows = `${HEAD}1ZLWV2AC1M1106317,Foxglove Fleet Lanes,,9000,15000,900,,\n1ZL3H4C21M0104471,Foxglove Fleet Lanes,,9000,15000,900,,0\n1ZLWV2AC1M1106317,Foxglove Fleet Lanes,,9000,15000,900,Clean,\n`;
    const { out, warned } = await call(['-', '--setup', SETUP], { '-': rows });
    const assumed = out.split('Assumed:\n')[1];
    expect(assumed).toContain('  Rows 2–3: No title is set: assumed clean.');
    expect(assumed).toContain('  Row 3: Transport is quoted at $0: delivery is counted as free.');
    expect(warned).toContain('Row 3 (1ZL3H4C21M0104471): Transport is quoted at $0');
    expect(warned).not.toContain('assumed clean');
    const none = setupText.replace('"feeScheduleIds": ["foxglove-buyer"]', '"feeScheduleIds": []');
    expect((await call(['-', '--setup', SETUP], { '-': rows, [SETUP]: none })).warned).toContain(
      'Row 2 (1ZLWV2AC1M1106317): “Foxglove Fleet Lanes” has no buy fees yet.',
    );
  });

  test('asks about a car that stands twice', async () => {
    const row = (vin: string, retail: number) => `${vin},Foxglove Fleet Lanes,,9000,${retail},900,Clean,300\n`;
    const { lots, warned } = await answers(
      HEAD + row('1ZLWV2AC1M1106317', 15_000) + row('1zlwv2ac1 m1106317', 15_000) + row('1ZLWV2AC1M1106317', 19_000),
    );
    expect(warned).toContain('The same VIN stands in row 2, with nothing else. Leave one out.');
    expect(warned).toContain('The same VIN stands in row 2, with other figures. Keep the row that is right.');
    expect(lots[0].faults.join()).not.toContain('The same VIN');
  });

  test.each([
    [{ npm_config_setup: 'true' }, [LOTS, SETUP], 'npm took --setup for itself'],
    [{ npm_config_json: 'true' }, [LOTS, '--setup', SETUP], 'npm took --json for itself'],
    [{ npm_config_setup: SETUP, npm_config_json: 'true' }, [LOTS], 'npm took --setup and --json for itself'],
  ])('says that -- is missing when npm left %j', async (environment, flags, sentence) => {
    const { code, out, warned } = await call(flags, {}, environment);
    expect([code, out]).toEqual([1, '']);
    expect(warned).toContain(sentence);
    expect((await call([LOTS, '--setup', SETUP, '--json'], {}, environment)).code).toBe(0);
  });

  test.each([
    ['no table', ['--setup', SETUP], 'Name the table'],
    ['no setup', [LOTS], 'Name the setup'],
    ['an unknown option', [LOTS, '--setup', SETUP, '--fast'], 'no option --fast'],
    ['two tables', [LOTS, LOTS, '--setup', SETUP], 'One table at a time'],
    ['a missing file', ['none.csv', '--setup', SETUP], 'There is no file none.csv'],
    ['a missing setup', [LOTS, '--setup', 'none.json'], 'There is no file none.json'],
    ['both from standard input', ['-', '--setup', '-'], 'Only one of the two'],
  ])('ends with 1 and says what to do for %s', async (_, flags, sentence) => {
    const { code, out, warned } = await call(flags);
    expect([code, out]).toEqual([1, '']);
    expect(warned).toContain(sentence);
  });

  test.each([
    ['that is not JSON', '{ "format": ', 'not JSON'],
    ['of another kind', '{"a":1}', 'not a setup file'],
    ['with a fault', setupText.replace('"dollarsCents": 150000', '"dollarsCents": 1.5'), 'whole number of cents'],
    ['with a word it does not know', setupText.replace('"packCents"', '"packDollars"'), 'is not known'],
  ])('ends with 1 and names what is wrong in a setup %s', async (_, text, sentence) => {
    const { code, out, warned } = await call([LOTS, '--setup', SETUP], { [SETUP]: text });
    expect([code, out]).toEqual([1, '']);
    expect(warned).toContain('can’t be used');
    expect(warned).toContain(sentence);
  });

  test('ends with 1 for a table that is none', async () => {
    const { code, warned } = await call(['-', '--setup', SETUP], { '-': '' });
    expect(code).toBe(1);
    expect(warned).toContain('It is empty');
  });

  test('explains itself when asked', async () => {
    const { code, out } = await call(['--help']);
    expect(code).toBe(0);
    for (const key of ['vin', 'maxBid', 'limitedBy', 'expectedProfit', 'allIn', 'lines', 'holdFactors', 'problems']) {
      expect(out).toContain(key);
    }
  });
});

test('runs from the task runner with the table on standard input, and a pipe gets all of it', () => {
  const rows = Array.from({ length: 400 }, (_, i) => `,Foxglove Fleet Lanes,,,${15_000 + i},,Clean,500`);
  const csv = `Lot number${HEAD.slice('VIN'.length)}${rows.map((row, i) => `L${i}${row}`).join('\n')}\n`;
  const done = spawnSync(process.execPath, ['scripts/run.mjs', 'worksheet', '-', '--setup', SETUP, '--json'], {
    input: csv,
    encoding: 'utf8',
    maxBuffer: 50_000_000,
  });
  expect(done.stderr).toBe('');
  expect(done.status).toBe(0);
  expect(JSON.parse(done.stdout)).toHaveLength(400);
});
