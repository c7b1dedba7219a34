import { expect, test } from 'vitest';
import { readBuyFee } from '../../../src/domain/fees/read-buy-fee.ts';
import { readFeeTable } from '../../../src/domain/fees/read-fee-table.ts';

const bands = (text: string) => {
  const { bands: read, faults } = readBuyFee(text);
  return faults.length > 0 ? faults.map(({ message }) => message) : read.map(({ band }) => band);
};

test.each([
  ['250', { flatCents: 25_000, ratePpm: 0 }],
  [' $1,250.50 ', { flatCents: 125_050, ratePpm: 0 }],
  ['2.5%', { flatCents: 0, ratePpm: 25_000 }],
  ['$100 + 2%', { flatCents: 10_000, ratePpm: 20_000 }],
  ['3% (min $150)', { flatCents: 0, ratePpm: 30_000, minimumCents: 15_000 }],
  ['3%, max 600', { flatCents: 0, ratePpm: 30_000, maximumCents: 60_000 }],
  ['free', { flatCents: 0, ratePpm: 0 }],
])('“%s” is one fee at every price', (text, fee) => {
  expect(bands(text)).toEqual([{ fromCents: 0, ...fee }]);
});

test.each(['0-4999 $200\n5000 and up 3%', '5000+ 3%', '$1,000 and up 2%', '200 300', ''])(
  'whatever else is written is read as a table: “%s”',
  (text) => {
    expect(readBuyFee(text)).toEqual(readFeeTable(text));
  },
);
