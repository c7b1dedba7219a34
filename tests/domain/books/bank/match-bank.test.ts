import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BankLine } from '../../../../src/domain/books/bank/bank-line.ts';
import type { BookMove, MoveKind } from '../../../../src/domain/books/bank/book-move.ts';
import { matchBank } from '../../../../src/domain/books/bank/match-bank.ts';
import { cents } from '../../../../src/domain/money/cents.ts';
import { day, lines as someLines, moves as someMoves } from './bank-arbitrary.ts';

const sum = (some: readonly { readonly cents: number }[]) => some.reduce((all, one) => all + one.cents, 0);

test('no line and no payment is ever used twice, and what is matched and what is not come to the statement to the cent', () => {
  fc.assert(
    fc.property(someLines, someMoves, (lines, moves) => {
      const { proposed, lines: alone, moves: left } = matchBank(lines, moves);
      const [matched, paid] = [proposed.flatMap((one) => one.lines), proposed.flatMap((one) => one.moves)];
      expect([...matched, ...alone].map(({ key }) => key).sort()).toEqual(lines.map(({ key }) => key).sort());
      expect([...paid, ...left].map(({ key }) => key).sort()).toEqual(moves.map(({ key }) => key).sort());
      expect(sum(matched) + sum(alone)).toBe(sum(lines));
      for (const one of proposed) {
        expect(one.difference).toBe(sum(one.lines) - sum(one.moves));
        if (one.sure) expect(one.difference).toBe(0);
        expect(one.lines.length === 1 || one.moves.length === 1).toBe(true);
      }
    }),
    { numRuns: 400 },
  );
});

test('the order in which lines and payments stand changes nothing in what is sure', () => {
  const surely = (lines: readonly BankLine[], moves: readonly BookMove[]) =>
    matchBank(lines, moves)
      .proposed.filter(({ sure }) => sure)
      .map((one) => [one.lines.map(({ key }) => key).sort(), one.moves.map(({ key }) => key).sort()].join('='))
      .sort();
  fc.assert(
    fc.property(someLines, someMoves, (lines, moves) => {
      expect(surely(lines.toReversed(), moves.toReversed())).toEqual(surely(lines, moves));
    }),
    { numRuns: 300 },
  );
});

const line = (text: string, amount: number, date = '2026-11-20', check?: string): BankLine => ({
  key: `${text} ${amount} ${date}`,
  date: day(date),
  cents: cents(amount),
  text,
  ...(check !== undefined && { check }),
});
const move = (
  payee: string | undefined,
  amount: number,
  date = '2026-11-18',
  more: Partial<BookMove> = {},
): BookMove => {
  const key = `${payee} ${amount} ${date} ${more.number ?? ''}`;
  const what: MoveKind = amount > 0 ? 'refund' : 'payment';
  return { key, keys: [`${key}/0`], what, date: day(date), cents: cents(amount), payee, ...more };
};
const only = (lines: readonly BankLine[], moves: readonly BookMove[]) => {
  const { proposed } = matchBank(lines, moves);
  return proposed.map(({ sure, evidence, difference, lines: own, moves: paid }) => [
    sure,
    evidence,
    difference,
    own.length,
    paid.length,
  ]);
};

describe('a match is sure', () => {
  test('by the number of the check, however long it took to be cashed', () => {
    expect(
      only(
        [line('CHECK', -45_000, '2026-12-28', '1042')],
        [move('Bluff Haulers', -45_000, '2026-11-18', { number: '#1042' })],
      ),
    ).toEqual([[true, 'number', 0, 1, 1]]);
  });
  test('by a payee whose name the bank cut short', () => {
    expect(
      only(
        [line('ACH DEBIT SAGU FLATS DLR', -1_170_000)],
        [move('Saguaro Flats Dealer Sale', -1_170_000), move('Bluff Haulers', -1_170_000)],
      ),
    ).toEqual([[true, 'payee', 0, 1, 1]]);
  });
  test('where one check paid several bills, by its number or by all that its payee was paid', () => {
    const moves = [move('Bluff Haulers', -20_000), move('Bluff Haulers', -35_050)];
    expect(only([line('BLUFF HAULERS', -55_050)], moves)).toEqual([[true, 'payee', 0, 1, 2]]);
    const numbered = moves.map((one) => ({ ...one, number: '88' }));
    expect(only([line('CHECK PAID', -55_050, '2026-11-20', '0088')], numbered)).toEqual([[true, 'number', 0, 1, 2]]);
  });
});

describe('a match is offered, never made', () => {
  test('where two payments of one payee have the amount', () => {
    const found = matchBank(
      [line('BLUFF HAULERS', -40_000)],
      [move('Bluff Haulers', -40_000), move('Bluff Haulers', -40_000, '2026-11-19')],
    );
    expect(found.proposed).toMatchObject([{ sure: false, others: [{ cents: -40_000 }] }]);
    expect(found.moves).toHaveLength(1);
  });
  test('where the amount alone speaks for it and the line names somebody nobody knows', () => {
    expect(only([line('WEB PMT QUARTZITE', -40_000)], [move('Bluff Haulers', -40_000)])).toEqual([
      [false, 'unknown', 0, 1, 1],
    ]);
  });
  test('where the number is the same and two figures of the amount changed places, with the difference', () => {
    expect(
      only(
        [line('CHECK', -54_000, '2026-11-20', '1042')],
        [move('Bluff Haulers', -45_000, '2026-11-18', { number: '1042' })],
      ),
    ).toEqual([[false, 'number', -9000, 1, 1]]);
  });
  test('where the bank made one payment in two parts', () => {
    expect(
      only([line('BLUFF HAULERS', -30_000), line('BLUFF HAULERS 2', -25_050)], [move('Bluff Haulers', -55_050)]),
    ).toEqual([[false, 'payee', 0, 2, 1]]);
  });
});

describe('nothing is matched', () => {
  test('where the check has another number', () => {
    expect(
      only(
        [line('CHECK', -45_000, '2026-11-20', '1043')],
        [move('Bluff Haulers', -45_000, '2026-11-18', { number: '1042' })],
      ),
    ).toEqual([]);
  });
  test('between a payment that came back and a refund of the same amount', () => {
    expect(only([line('RETURNED CHECK BLUFF HAULERS', 40_000)], [move('Bluff Haulers', 40_000)])).toEqual([]);
    expect(
      only([line('BLUFF HAULERS CREDIT', 40_000)], [move('Bluff Haulers', 40_000, '2026-11-18', { what: 'returned' })]),
    ).toEqual([]);
  });
  test('between money in and money out, or where the line names another payee', () => {
    expect(only([line('BLUFF HAULERS', 40_000)], [move('Bluff Haulers', -40_000)])).toEqual([]);
    expect(only([line('SAGUARO FLATS', -40_000)], [move('Bluff Haulers', -40_000), move('Saguaro Flats', -1)])).toEqual(
      [],
    );
  });
  test('between the bank’s fee for a check and the check', () => {
    expect(
      only(
        [line('RETURNED CHECK FEE CHECK #1042', -2500)],
        [move('Bluff Haulers', -45_000, '2026-11-18', { number: '1042' })],
      ),
    ).toEqual([]);
  });
});

test('5,000 lines and as many payments are matched within a second of work', () => {
  const names = Array.from(
    { length: 120 },
    (_, i) => `Payee${String.fromCharCode(97 + (i % 26))}${'abcdefgh'[i % 8]}${'xyzuvw'[i % 6]} Yard`,
  );
  const moves = Array.from({ length: 5000 }, (_, i) => ({
    ...move(names[i % 120], -(10_000 + ((i * 7919) % 90_000))),
    key: `m${i}`,
  }));
  const lines = moves.map((one, i): BankLine => ({ ...line(`ACH ${names[i % 120]}`, one.cents), key: `l${i}` }));
  const from = performance.now();
  matchBank(lines, moves);
  expect(performance.now() - from).toBeLessThan(4000);
});
