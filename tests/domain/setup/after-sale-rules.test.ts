import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FEDERAL_CALENDAR } from '../../../src/domain/deadline/business-calendar.ts';
import { faultSentence } from '../../../src/domain/setup/setup-faults.ts';
import { readSetupFile, writeSetupFile } from '../../../src/domain/setup/setup-file.ts';

const example = JSON.parse(readFileSync('tests/fixtures/setup-example.json', 'utf8'));

/** The example, its first venue with these terms. */
const withTerms = (afterSale: unknown) => {
  const [first, ...others] = example.venues;
  return JSON.stringify({ ...example, venues: [{ ...first, afterSale }, ...others] });
};
const faults = (afterSale: unknown) => {
  const read = readSetupFile(withTerms(afterSale));
  return read.ok ? [] : read.faults.map(faultSentence);
};

test('a venue’s terms can be written in a few words, and keep through a file with all that was left out', () => {
  const read = readSetupFile(withTerms({ steps: { pay: { amount: 2, unit: 'business-days', from: 'sale' } } }));
  if (!read.ok) throw new Error('the setup was refused');
  const [venue] = read.value.venues;
  expect(venue?.afterSale).toEqual({
    calendar: FEDERAL_CALENDAR,
    steps: {
      pay: {
        amount: 2,
        unit: 'business-days',
        from: 'sale',
        firstDay: 'next',
        cutOff: '23:59',
        lateCountsNextDay: false,
        whenClosed: 'stays',
      },
    },
    disputes: {},
  });
  expect(readSetupFile(writeSetupFile(read.value))).toEqual(read);
});

test('a setup without them is as it was', () => {
  const read = readSetupFile(JSON.stringify(example));
  expect(read.ok && read.value.venues.every((venue) => !('afterSale' in venue))).toBe(true);
});

test('what is wrong is said with its place and what to write', () => {
  const rule = { amount: 2, unit: 'business-days', from: 'sale' };
  expect(faults({ steps: { pay: { ...rule, cutOff: '5 PM' } } })).toEqual([
    'Venues › Ocotillo Truck Sale › after the sale › steps › pay by › cut-off hour: must be a time of day on a 24-hour clock, such as 09:30.',
  ]);
  expect(faults({ disputes: { 'hidden-defect': { claim: { ...rule, amount: 0, firstDay: 'same' } } } })).toEqual([
    'Venues › Ocotillo Truck Sale › after the sale › disputes › undisclosed defect › claim by › amount: a day that counts as day 1 needs at least 1 day.',
  ]);
  expect(faults({ steps: { paid: rule } })).toHaveLength(1);
  expect(faults({ calendar: { daysOff: ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] } })).toHaveLength(1);
});
