import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { repeatedKeys } from '../../../src/domain/setup/repeated-keys.ts';
import { faultSentence } from '../../../src/domain/setup/setup-faults.ts';
import { readSetupFile } from '../../../src/domain/setup/setup-file.ts';

const example = readFileSync('tests/fixtures/setup-example.json', 'utf8');

/** What is refused of the example when `change` has had its way with it. */
function faultsOf(change: (file: ReturnType<typeof JSON.parse>) => void): readonly string[] {
  const file = JSON.parse(example);
  change(file);
  const read = readSetupFile(JSON.stringify(file));
  return read.ok ? [] : read.faults.map(faultSentence);
}

describe('what must not stand twice in a setup', () => {
  test('two venues of one name, however it is written', () => {
    expect(faultsOf((file) => Object.assign(file.venues[1], { name: 'OCOTILLO truck-sale' }))).toEqual([
      expect.stringMatching(/^Venues › OCOTILLO truck-sale › name: another venue has this name too/),
    ]);
  });

  test('two titles of one name, of which one keeps less', () => {
    expect(faultsOf((file) => Object.assign(file.titles[1], { name: 'Clean' }))).toEqual([
      expect.stringMatching(/another title has this name too/),
    ]);
  });

  test('a fee schedule that a venue lists twice', () => {
    expect(faultsOf((file) => file.venues[0].feeScheduleIds.push('online'))).toEqual([
      expect.stringMatching(/the fees Online bidding: this fee schedule is listed twice/),
    ]);
  });

  test('a field in one group, with both lines named', () => {
    const twice = example.replace('"rules": {', '"rules": { "dollarsCents": 1500 },\n  "rules": {');
    expect(readSetupFile(twice)).toMatchObject({
      ok: false,
      faults: [{ message: expect.stringMatching(/“rules” stands twice in one group, in line \d+ and in line \d+/) }],
    });
  });
});

describe('a fee band', () => {
  test('without an amount is refused, also when it has a maximum; a flat fee of 0 says that it is free', () => {
    const with1 = (band: object) =>
      faultsOf((file) => {
        file.feeSchedules[1].editions[0].tables[0].bands[1] = { fromCents: 500_000, ...band };
      });
    expect(with1({})).toEqual([expect.stringMatching(/Online fee › band 2: this band has no amount/)]);
    expect(with1({ maximumCents: 9000 })).toEqual([expect.stringMatching(/band 2: this band has no amount/)]);
    expect(with1({ flatCents: 0 })).toEqual([]);
    expect(with1({ minimumCents: 9000 })).toEqual([]);
  });
});

test('an increment that is out of order is called an increment', () => {
  const at500 = faultsOf((file) => Object.assign(file.venues[0].increments[0], { fromCents: 50_000 }));
  expect(at500).toEqual([
    expect.stringMatching(/The first bid increment must start at \$0, or no bid increment is known/),
  ]);
});

test('no field stands twice in what JSON.stringify wrote, and each one added once more is found', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.jsonValue(), { minKeys: 1 }), fc.nat(), (group, pick) => {
      const text = JSON.stringify({ group, list: [group, group] }, null, 2);
      expect(repeatedKeys(text)).toEqual([]);
      const keys = Object.keys(group);
      const key = keys[pick % keys.length] ?? '';
      const again = `{"outer": [${JSON.stringify(group).slice(0, -1)}, ${JSON.stringify(key)}: {"${'x'}": 1}}]}`;
      expect(repeatedKeys(again).map((found) => found.key)).toEqual([key]);
    }),
  );
});
