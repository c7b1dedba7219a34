import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { demoSetup } from '../../../src/demo/demo-setup.ts';
import { cautionInFile, setupCautions } from '../../../src/domain/setup/setup-cautions.ts';
import { readSetupFile } from '../../../src/domain/setup/setup-file.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const example = readFileSync('tests/fixtures/setup-example.json', 'utf8');

/** The example with one figure changed, and what is said of it that was not said before. */
function saidOf(path: string, value: unknown): readonly string[] {
  const file = JSON.parse(example);
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  const group = keys.reduce((inner, key) => inner[key] ?? inner, file);
  group[last] = value;
  const read = readSetupFile(JSON.stringify(file));
  if (!read.ok) throw new Error(read.faults.map(({ message }) => message).join(' '));
  return setupCautions(read.value).map(cautionInFile);
}

const BAND = 'feeSchedules.1.editions.0.tables.0.bands.0';

/** Written by somebody who had not read the code: dollars where a file has cents, percent where it has parts per million. */
const WRONG_UNITS: readonly (readonly [path: string, wrong: number, meant: number, said: RegExp])[] = [
  ['costs.packCents', 300, 30_000, /^Costs: Pack is \$3\. That is too small/],
  ['costs.overheadCents', 250, 25_000, /Overhead is \$2\.50/],
  ['costs.sellingCents', 200, 20_000, /Selling cost is \$2/],
  ['costs.reconCents', 900, 90_000, /Recon is \$9/],
  ['rules.dollarsCents', 2000, 200_000, /Minimum profit is \$20/],
  ['rules.dollarsCents', 1_000_000_000_000, 200_000, /\$10,000,000,000\. That is too large/],
  ['rules.shareOfRetailPpm', 6, 60_000, /Minimum % of retail is 0\.0006%.*8% is 80000/],
  ['rules.shareOfRetailPpm', 6_000_000, 60_000, /600%/],
  ['rules.lossChancePpm', 20, 200_000, /Highest chance of a loss is 0\.002%/],
  ['titles.1.keepsPpm', 78, 780_000, /^Titles › Rebuilt: % of clean retail is 0\.0078%/],
  ['titles.1.keepsPpm', 0, 780_000, /0%/],
  [`${BAND}.ratePpm`, 6, 60_000, /percentage of “Online fee” from \$0 is 0\.0006%/],
  [`${BAND}.ratePpm`, 600, 60_000, /0\.06%/],
  [`${BAND}.ratePpm`, 6_000_000, 60_000, /600%/],
  [`${BAND}.flatCents`, 195, 19_500, /fee of “Online fee” from \$0 is \$1\.95/],
  [`${BAND}.minimumCents`, 150, 15_000, /minimum of “Online fee”.*\$1\.50/],
  ['feeSchedules.0.editions.1.charges.0.cents', 45, 4500, /“Gate pass” is \$0\.45.*\$300 is 30000/],
  ['venues.1.transport.cents', 350, 35_000, /Transport is \$3\.50/],
  ['venues.0.transport.centsPerMile', 1, 95, /Transport a mile is \$0\.01/],
  ['venues.0.transport.centsPerMile', 11_000, 95, /Transport a mile is \$110/],
  ['venues.0.increments.0.stepCents', 25, 2500, /Bid increment is \$0\.25/],
  ['venues.0.increments.0.stepCents', 2_500_000, 2500, /Bid increment is \$25,000/],
  ['carrying.floorPlan.annualRatePpm', 9, 90_000, /Interest per year is 0\.0009%/],
  ['carrying.floorPlan.annualRatePpm', 8_750_000, 87_500, /Interest per year is 875%/],
  ['carrying.floorPlan.advancePpm', 90, 900_000, /Share advanced is 0\.009%/],
  ['carrying.floorPlan.advanceCapCents', 40_000, 4_000_000, /Advance cap is \$400/],
  ['carrying.floorPlan.unitFeeCents', 95, 9500, /Unit fee is \$0\.95/],
  ['carrying.floorPlan.curtailments.0.sharePpm', 10, 100_000, /The curtailment on day 60 is 0\.001%/],
  ['carrying.cashAnnualRatePpm', 12, 120_000, /Cost of own cash per year is 0\.0012%/],
  ['carrying.lotCentsPerDay', 3, 350, /Lot space per day is \$0\.03/],
  ['carrying.daysToSell.days', 3650, 38, /Days to sell a car is 3,650/],
  ['undone.chancePpm', 2, 20_000, /Chance is 0\.0002%/],
  ['undone.chancePpm', 1_000_000, 20_000, /Chance is 100%/],
  ['undone.lostCents', 350, 35_000, /Amount lost is \$3\.50/],
];

describe('a figure that no dealer means', () => {
  test.each(WRONG_UNITS)('%s of %d is doubted, and %d is not', (path, wrong, meant, said) => {
    expect(saidOf(path, wrong)).toContainEqual(expect.stringMatching(said));
    expect(saidOf(path, meant)).toEqual([]);
  });

  test('bands that start in dollars where cents belong are doubted as a whole', () => {
    const table = 'feeSchedules.1.editions.0.tables.0.bands';
    const inDollars = [0, 5000, 10_000, 20_000].map((fromCents) => ({ fromCents, flatCents: 30_000 }));
    expect(saidOf(table, inDollars)).toEqual([expect.stringMatching(/last band of “Online fee” starts is \$200/)]);
    const steps = [
      { fromCents: 0, stepCents: 2500 },
      { fromCents: 10_000, stepCents: 5000 },
    ];
    expect(saidOf('venues.0.increments', steps)).toEqual([expect.stringMatching(/last bid increment holds is \$100/)]);
  });

  test('a table that charges nothing is named, and so are two lines of one name', () => {
    const table = 'feeSchedules.1.editions.0.tables';
    expect(saidOf(`${table}.0.bands`, [{ fromCents: 0, flatCents: 0 }])).toEqual([
      expect.stringMatching(/“Online fee” charges \$0 at every price/),
    ]);
    const [first] = JSON.parse(example).feeSchedules[1].editions[0].tables;
    expect(saidOf(table, [first, first])).toEqual([expect.stringMatching(/“Online fee” stands twice/)]);
  });

  test('a median past the day of wholesale is doubted', () => {
    expect(saidOf('carrying.daysToSell.days', 130)).toEqual([expect.stringMatching(/within 130 days.*on day 120/)]);
  });

  test('nothing is said of the figures that the program starts with or shows', () => {
    expect(setupCautions(startingSetup(zone('America/Boise')))).toEqual([]);
    expect(setupCautions(demoSetup('2026-11-25' as LocalDate))).toEqual([]);
    expect(saidOf('version', 1)).toEqual([]);
  });
});
