import { describe, expect, test } from 'vitest';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { openStatement } from '../../../src/intake/bank/open-statement.ts';
import { readBankTable, type SaidOfTable } from '../../../src/intake/bank/read-bank-table.ts';

const TODAY = '2026-12-10' as LocalDate;

function read(rows: readonly string[], said: Partial<SaidOfTable> = {}) {
  const opened = openStatement(rows.join('\n'));
  if (!opened.ok || opened.value.as !== 'table') throw new Error('it was not opened as a table');
  const { table } = opened.value;
  return readBankTable(table, { account: 'Bank', roles: table.roles, ...said }, TODAY);
}
const amounts = (rows: readonly string[], said?: Partial<SaidOfTable>) =>
  read(rows, said).read?.lines.map(({ date, cents }) => [date, cents]);

describe('what a file leaves open is asked', () => {
  test('the order of its days, where both orders are possible', () => {
    const rows = ['Date,Description,Amount', '02/03/2026,CHECK,-4.00', '03/03/2026,WIRE,-5.00', '04/03/2026,ACH,-6.00'];
    expect(read(rows)).toEqual({ doubts: ['day-order'] });
    expect(amounts(rows, { order: 'day-first' })?.[0]).toEqual(['2026-03-02', -400]);
  });
  test('whether amounts without a sign are money in or out', () => {
    const rows = ['Date,Description,Amount', '11/24/2026,WIRE,450.00', '11/25/2026,SHOP,12.00'];
    expect(read(rows)).toEqual({ doubts: ['direction'] });
    expect(amounts(rows, { plain: 'out' })).toEqual([
      ['2026-11-24', -45_000],
      ['2026-11-25', -1200],
    ]);
  });
  test('what its columns hold, where no amount is named', () => {
    expect(
      read(['Date,Description,Amount', '11/24/2026,WIRE,450.00'], { roles: ['date', 'text', null] }).doubts,
    ).toEqual(['columns']);
  });
});

test('a running balance proves directions and order, and a line that is missing is said with its sum', () => {
  const rows = [
    'Date,Text,Amount,Balance',
    '11/30/2026,WIRE,100.00,850.00',
    '11/25/2026,DEPOSIT,50.00,950.00',
    '11/24/2026,CHECK 7,100.00,900.00',
  ];
  expect(amounts(rows, { opening: 100_000 as never })).toEqual([
    ['2026-11-24', -10_000],
    ['2026-11-25', 5000],
    ['2026-11-30', -10_000],
  ]);
  const gap = read([
    'Date,Text,Amount,Balance',
    '11/24/2026,CHECK,-100.00,900.00',
    '11/30/2026,WIRE,-100.00,750.00',
  ]).read;
  expect(gap?.balance).toMatchObject({ ties: false, message: expect.stringContaining('$50') });
});

test('two lines that are alike in all are two, and reading the same file again gives the same keys', () => {
  const rows = ['Date,Text,Amount', '11/24/2026,TOLL,-4.00', '11/24/2026,TOLL,-4.00', '11/25/2026,TOLL,-4.00'];
  const keys = read(rows).read?.lines.map(({ key }) => key);
  expect(new Set(keys).size).toBe(3);
  expect(read(rows).read?.lines.map(({ key }) => key)).toEqual(keys);
});

test('a bad row costs only itself, and is named', () => {
  const { read: found } = read([
    'Date,Text,Amount',
    '11/24/2026,ONE,-4.00',
    '13/45/2026,TWO,-5.00',
    '11/26/2026,THREE,x',
    '11/27/2027,FOUR,-1.00',
  ]);
  expect(found?.lines).toHaveLength(1);
  expect(found?.faults.map(({ row }) => row)).toEqual([3, 4, 5]);
});

describe('an OFX file', () => {
  const ofx = (more: string, cur = 'USD') =>
    openStatement(
      `OFXHEADER:100\n\n<OFX><BANKMSGSRSV1><STMTTRNRS><STMTRS><CURDEF>${cur}<BANKACCTFROM><ACCTID>00914471</BANKACCTFROM><BANKTRANLIST>${more}</BANKTRANLIST></STMTRS></STMTTRNRS></BANKMSGSRSV1></OFX>`,
    );
  const statement = (more: string) => {
    const opened = ofx(more);
    return opened.ok && opened.value.as === 'ofx' ? opened.value.statements[0] : undefined;
  };
  test('keeps the day that it writes, whatever zone stands behind it', () => {
    const found = statement(
      '<STMTTRN><TRNTYPE>CHECK<DTPOSTED>20261130233000[-7:MST]<TRNAMT>-1.50<FITID>a<NAME>A &amp; B</STMTTRN>',
    );
    expect(found?.lines).toEqual([{ key: '…4471|Fa', date: '2026-11-30', cents: -150, text: 'A & B' }]);
  });
  test('keeps two different lines that a bank gave one id, and says so', () => {
    const line = (amount: string) => `<STMTTRN><DTPOSTED>20261130<TRNAMT>${amount}<FITID>a<NAME>X</STMTTRN>`;
    const found = statement(line('-1.00') + line('-2.00'));
    expect(new Set(found?.lines.map(({ key }) => key)).size).toBe(2);
    expect(found?.notes[0]?.message).toContain('two different lines');
  });
  test('takes back what it deletes, also of an earlier file', () => {
    const found = statement(
      '<STMTTRN><DTPOSTED>20261130<TRNAMT>0<FITID>b<CORRECTFITID>a<CORRECTACTION>DELETE</STMTTRN>',
    );
    expect(found?.dropped).toEqual(['…4471|Fa']);
  });
  test('in another currency, or without a statement, is refused with what to do', () => {
    expect(ofx('', 'EUR')).toMatchObject({ ok: false, message: expect.stringContaining('Only US dollars') });
    expect(openStatement('<OFX></OFX>')).toMatchObject({ ok: false, reason: 'no-statement' });
  });
});
