import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensureJournalTool } from '../../scripts/ensure-journal-tool.ts';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';
import { type AccountKey, STARTING_BOOKKEEPING } from '../../src/domain/accounts/accounts.ts';
import type { Month } from '../../src/domain/books/month.ts';
import { beancountJournal } from '../../src/domain/books/out/beancount-journal.ts';
import { plainTextJournal } from '../../src/domain/books/out/plain-text-journal.ts';
import { accrualMonths, accrualOf } from '../../src/domain/books/post/accrual.ts';
import { type CarBookings, lotTransactions } from '../../src/domain/books/post/lot-transactions.ts';
import { balances, postMonths, toClose } from '../../src/domain/books/post/post-months.ts';
import type { Transaction } from '../../src/domain/books/post/transaction.ts';
import { cents } from '../../src/domain/money/cents.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { lotNumber, randomCar } from '../domain/books/random-car.ts';

// Real programs from Debian's packages read what the books write, and their totals are compared with ours.
const { accounts, treatment } = STARTING_BOOKKEEPING;
const HEAD = { title: 'Cottonwood Truck & Van; an invented dealer', zone: 'America/Boise' };
const tools = { ledger: '', hledger: '', beancheck: '' };
let folder = '';

beforeAll(() => {
  tools.ledger = ensureJournalTool('ledger');
  tools.hledger = ensureJournalTool('hledger');
  tools.beancheck = ensureJournalTool('bean-check');
  folder = temporaryFolder();
}, 300_000);
afterAll(() => removeFolder(folder));

/** Every car is won in August; what is not billed at its end is accrued, and taken back by the bill. */
const withAccrual = (car: CarBookings): CarBookings => ({
  ...car,
  venue: 'Saguaro Sale Yard',
  accrual: accrualOf(
    {
      ...car,
      won: { hammer: cents(1_235_000), date: '2026-08-20' as LocalDate },
      expected: { lines: [{ cost: 'fee', cents: cents(47_500) }] },
    },
    accrualMonths([], '2026-12' as Month),
  ),
});

/**
 * Forty lives, a month closed in their midst and some bills changed after it: corrections are in the file too, and what is
 * accrued at a month's end.
 */
function manyTransactions(seed: number): readonly Transaction[] {
  const cars = (from: number): CarBookings[] =>
    fc.sample(fc.tuple(...Array.from({ length: 40 }, (_, n) => randomCar(n))), { seed: from, numRuns: 1 })[0] ?? [];
  const all = (some: readonly CarBookings[]) => some.flatMap((car) => lotTransactions(withAccrual(car), treatment));
  const before = all(cars(seed));
  const after = [...before.slice(0, -60), ...all(cars(seed + 1)).slice(-60)];
  const september = '2026-09' as Month;
  return postMonths(after, [{ month: september, transactions: toClose(postMonths(before, []), september) }])
    .transactions;
}

/** Each car with a VIN that a standard prints, and a lot number full of marks that mean something to a journal. */
const carsOf = (transactions: readonly Transaction[]) =>
  new Map(transactions.map(({ lot }) => [lot, { vin: '1M8GDM9AXKP042788', lotNumber: '0218; a, b: "c"' }]));

function written(transactions: readonly Transaction[], name: string): string {
  const file = path.join(folder, name);
  writeFileSync(file, [...plainTextJournal(transactions, accounts, carsOf(transactions), HEAD)].join(''));
  return file;
}

/** Balances in cents by account name, from `"Assets:Bank","$-12.50"` or `Assets:Bank|$-12.50`, a line each. */
function readBalances(lines: readonly string[]): Record<string, number> {
  const pairs = lines.flatMap((line) => {
    const match = /^"?([^"|]+?)"?[,|]"?\$(-?)(\d+)\.(\d\d)"?$/.exec(line.trim().replace(/(?<=\d),(?=\d{3})/g, ''));
    if (match === null) return [];
    const [, name = '', sign, whole, fraction] = match;
    return [[name, (sign === '-' ? -1 : 1) * Number(`${whole}${fraction}`)] as const];
  });
  return Object.fromEntries(pairs);
}

const ours = (transactions: readonly Transaction[]) =>
  Object.fromEntries([...balances(transactions)].map(([key, cents]: [AccountKey, number]) => [accounts[key], cents]));

describe.each([11, 23, 47])('the journal of forty random cars, number %i', (seed) => {
  const transactions = manyTransactions(seed);

  test('is accepted by hledger with every check it has, and has the same balances there', () => {
    const file = written(transactions, `h${seed}.journal`);
    execFileSync(tools.hledger, ['-f', file, 'check', '--strict'], { encoding: 'utf8' });
    const out = execFileSync(tools.hledger, ['-f', file, 'balance', '-O', 'csv', '--no-total', '--flat'], {
      encoding: 'utf8',
    });
    expect(transactions.length).toBeGreaterThan(150);
    expect(transactions.some(({ text }) => text.startsWith('Accrual reversed: billed'))).toBe(true);
    expect(readBalances(out.split('\n'))).toEqual(ours(transactions));
  });

  test('is accepted by ledger, without an account or a commodity it was not told of, and has the same balances there', () => {
    const file = written(transactions, `l${seed}.journal`);
    const format = '%(account)|%(display_total)\n';
    const out = execFileSync(
      tools.ledger,
      ['-f', file, '--pedantic', 'balance', '--flat', '--no-total', '--format', format],
      { encoding: 'utf8' },
    );
    expect(readBalances(out.split('\n'))).toEqual(ours(transactions));
  });
});

test('beancount accepts its own format, and balances that are asserted to be ours', () => {
  const transactions = manyTransactions(11);
  const last = transactions.at(-1)?.date ?? '';
  const day = `${Number(last.slice(0, 4)) + 1}-01-01`;
  const asserted = Object.entries(ours(transactions)).map(
    ([name, cents]) => `${day} balance ${name}  ${(cents / 100).toFixed(2)} USD\n`,
  );
  const check = (file: string, text: string) => {
    writeFileSync(path.join(folder, file), text);
    return spawnSync(tools.beancheck, [path.join(folder, file)], { encoding: 'utf8' });
  };
  const text = beancountJournal(transactions, accounts, carsOf(transactions), HEAD);
  if (!text.ok) throw new Error(text.message);
  const good = check('good.beancount', text.value + asserted.join(''));
  expect([good.status, good.stderr, good.stdout]).toEqual([0, '', '']);
  expect(asserted.length).toBeGreaterThan(5);
  const off = check('off.beancount', text.value + asserted.join('').replace(/(\d)\.(\d\d) USD/, '$19.$2 USD'));
  expect(off.status).not.toBe(0);
});

test('numbers of bills and checks, and vendors, are where each program looks for them', () => {
  const lot = lotNumber(1);
  const paid = { date: '2026-11-30' as LocalDate, cents: cents(45_000), payee: 'Bluff Haulers', key: 'p' };
  const transactions = lotTransactions(
    { lot, name: 'Hauler', costs: [], floor: [], payments: [{ ...paid, document: { number: '1002' } }] },
    treatment,
  );
  const file = written(transactions, 'numbers.journal');
  const printed = execFileSync(tools.hledger, ['-f', file, 'print', '-O', 'csv'], { encoding: 'utf8' });
  expect(printed).toMatch(/"2026-11-30","","\*","1002","Bluff Haulers: Payment/);
  const tagged = execFileSync(tools.hledger, ['-f', file, 'print', 'tag:vendor=Bluff', 'tag:number=1002'], {
    encoding: 'utf8',
  });
  expect(tagged).toContain('(1002)');
  const code = execFileSync(tools.ledger, ['-f', file, 'register', '--format', '%(code)|%(tag("vendor"))\n'], {
    encoding: 'utf8',
  });
  expect(code.split('\n')[0]).toBe('1002|Bluff Haulers');
  const text = beancountJournal(transactions, accounts, carsOf(transactions), HEAD);
  if (!text.ok) throw new Error(text.message);
  expect(text.value).toContain('2026-11-30 * "Bluff Haulers" "Bluff Haulers: Payment');
  expect(text.value).toContain('  number: "1002"');
});

test('once a statement was read, hledger and ledger count exactly what is matched as cleared at the bank', () => {
  const transactions = manyTransactions(23);
  const atBank = transactions.filter(({ postings }) => postings.some(({ account }) => account === 'bank'));
  const cleared = new Set(atBank.filter((_, i) => i % 3 === 0).map(({ key }) => key));
  const file = path.join(folder, 'cleared.journal');
  writeFileSync(
    file,
    [...plainTextJournal(transactions, accounts, carsOf(transactions), { ...HEAD, cleared })].join(''),
  );
  const sum = (is: (key: string) => boolean) => ours(atBank.filter(({ key }) => is(key)))[accounts.bank];
  const hledger = (flag: string) =>
    readBalances(
      execFileSync(tools.hledger, ['-f', file, 'balance', accounts.bank, flag, '-O', 'csv', '--no-total', '--flat'], {
        encoding: 'utf8',
      }).split('\n'),
    )[accounts.bank];
  expect(hledger('--cleared')).toBe(sum((key) => cleared.has(key)));
  expect(hledger('--unmarked')).toBe(sum((key) => !cleared.has(key)));
  const format = '%(account)|%(display_total)\n';
  const out = execFileSync(
    tools.ledger,
    ['-f', file, 'balance', accounts.bank, '--cleared', '--flat', '--no-total', '--format', format],
    { encoding: 'utf8' },
  );
  expect(readBalances(out.split('\n'))[accounts.bank]).toBe(sum((key) => cleared.has(key)));
});

test('account names that the user chose are written as each program takes them, or refused with the name', () => {
  const transactions = manyTransactions(23);
  const own = { ...accounts, inventory: 'Assets:Used trucks & vans', bank: 'Assets:bank:2nd account' };
  const file = path.join(folder, 'own.journal');
  writeFileSync(file, [...plainTextJournal(transactions, own, carsOf(transactions), HEAD)].join(''));
  execFileSync(tools.hledger, ['-f', file, 'check', '--strict']);
  execFileSync(tools.ledger, ['-f', file, '--pedantic', 'balance']);
  const text = beancountJournal(transactions, own, carsOf(transactions), HEAD);
  if (!text.ok) throw new Error(text.message);
  const bean = path.join(folder, 'own.beancount');
  writeFileSync(bean, text.value);
  expect(execFileSync(tools.beancheck, [bean], { encoding: 'utf8' })).toBe('');
  const refused = beancountJournal(transactions, { ...accounts, bank: 'Checking' }, new Map(), HEAD);
  expect(refused).toMatchObject({ ok: false, message: expect.stringContaining('“Checking” must begin with Assets') });
});

test('a file that is a cent off is refused by both, so that they are judges at all', () => {
  const [first] = manyTransactions(11);
  if (first === undefined) throw new Error('there is nothing in the journal');
  const [one, ...rest] = first.postings;
  if (one === undefined) throw new Error('the transaction has no postings');
  const wrong = { ...first, postings: [{ ...one, cents: (one.cents + 1) as typeof one.cents }, ...rest] };
  const file = written([wrong], 'wrong.journal');
  expect(spawnSync(tools.hledger, ['-f', file, 'check']).status).not.toBe(0);
  expect(spawnSync(tools.ledger, ['-f', file, 'balance']).status).not.toBe(0);
});
