import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { BookMove } from '../../../src/domain/books/bank/book-move.ts';
import { matchBank } from '../../../src/domain/books/bank/match-bank.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { openStatement } from '../../../src/intake/bank/open-statement.ts';
import { readBankTable } from '../../../src/intake/bank/read-bank-table.ts';

// Written by somebody who had not read the code; the OFX files were read without error by libofx, with the same sums.
const FOLDER = 'tests/fixtures/bank';
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));

interface Expected {
  readonly today: LocalDate;
  readonly statement: { readonly opening: string; readonly closing: string };
  readonly lines: readonly {
    readonly id: string;
    readonly date: string;
    readonly dateAccept?: readonly string[];
    readonly amount: string;
    readonly replaced?: true;
    readonly again?: true;
    readonly pending?: true;
  }[];
  readonly books: readonly {
    readonly id: string;
    readonly what: 'payment' | 'refund';
    readonly vendor: string;
    readonly amount: string;
    readonly on: LocalDate;
    readonly number: string | null;
    readonly status: string;
  }[];
  readonly matches: readonly {
    readonly lines: readonly string[];
    readonly books: readonly string[];
    readonly made: 'sure' | 'offered' | 'either';
    readonly difference: string;
  }[];
}

const inCents = (dollars: string) => cents(Math.round(Number(dollars) * 100));

function read(name: string, expected: Expected) {
  const file = readdirSync(FOLDER).find((each) => each.startsWith(name) && !each.endsWith('.json')) ?? '';
  const opened = openStatement(readFileSync(`${FOLDER}/${file}`, 'utf8'));
  if (!opened.ok) throw new Error(opened.message);
  if (opened.value.as === 'ofx') return opened.value.statements[0];
  const { table } = opened.value;
  const said = { account: 'Bank', roles: table.roles };
  const own = readBankTable(table, said, expected.today);
  expect(own.doubts).toEqual([]);
  if (own.read?.closing !== undefined) return own.read;
  // Where the file has no balances they are typed from the paper.
  const { opening, closing } = expected.statement;
  return readBankTable(table, { ...said, opening: inCents(opening), closing: inCents(closing) }, expected.today).read;
}

test.each(NAMES)('the statement %s is read whole, ties, and is matched as a bookkeeper would', (json) => {
  const expected: Expected = JSON.parse(readFileSync(`${FOLDER}/${json}`, 'utf8'));
  const statement = read(json.replace('.json', ''), expected);
  if (statement === undefined) throw new Error('nothing was read');
  expect(statement.faults).toEqual([]);
  expect(statement.balance?.ties).toBe(true);
  expect([statement.opening, statement.closing]).toEqual([
    inCents(expected.statement.opening),
    inCents(expected.statement.closing),
  ]);
  // A line that is pending is no line yet, and of one that was replaced or repeated only one counts.
  const meant = expected.lines.filter(({ replaced, again, pending }) => !replaced && !again && !pending);
  const ids = new Map<string, string>();
  for (const { id, date, dateAccept = [date], amount } of meant) {
    const line = statement.lines.find(
      (one) => dateAccept.includes(one.date) && one.cents === inCents(amount) && !ids.has(one.key),
    );
    if (line !== undefined) ids.set(line.key, id);
  }
  expect([ids.size, statement.lines.length]).toEqual([meant.length, meant.length]);
  const moves = expected.books
    .filter(({ status }) => status === 'open')
    .map(({ id, what, vendor, amount, on, number }): BookMove => {
      const size = inCents(amount);
      const signed = what === 'payment' ? cents(-size) : size;
      return { key: id, keys: [id], what, date: on, cents: signed, payee: vendor, ...(number !== null && { number }) };
    });
  const found = matchBank(statement.lines, moves).proposed.map((one) => ({
    lines: one.lines.map(({ key }) => ids.get(key)).sort(),
    books: one.moves.map(({ key }) => key).sort(),
    sure: one.sure,
    difference: one.difference,
  }));
  const pending = new Set(expected.lines.filter((line) => line.pending).map(({ id }) => id));
  for (const { lines, books, made, difference } of expected.matches) {
    if (lines.some((id) => pending.has(id))) continue;
    const same = found.find(
      (one) => one.lines.join() === lines.toSorted().join() && one.books.join() === books.toSorted().join(),
    );
    expect(same, `${lines} with ${books}`).toBeDefined();
    expect(same?.difference).toBe(inCents(difference));
    if (made !== 'either') expect(same?.sure, `${lines} with ${books}`).toBe(made === 'sure');
  }
  const wanted = expected.matches.map(({ lines, books }) => `${lines.toSorted()}=${books.toSorted()}`);
  for (const one of found) expect(wanted).toContain(`${one.lines}=${one.books}`);
});
