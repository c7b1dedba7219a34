import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Setup, setupFileSchema } from '../../../src/domain/setup/setup.ts';
import { faultSentence } from '../../../src/domain/setup/setup-faults.ts';
import { readSetupFile, writeSetupFile } from '../../../src/domain/setup/setup-file.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const starting = startingSetup(zone('America/Boise'));

const faultsOf = (text: string) => {
  const reading = readSetupFile(text);
  return reading.ok ? [] : reading.faults.map(faultSentence);
};

describe('a setup file', () => {
  test('read back is the setup that was saved', () => {
    expect(readSetupFile(writeSetupFile(starting))).toEqual({ ok: true, value: starting });
  });

  test('is exactly what the schema of the file allows', () => {
    expect(setupFileSchema.safeParse(JSON.parse(writeSetupFile(starting))).error).toBeUndefined();
  });

  test('may name its schema and may start with a byte-order mark', () => {
    const text = JSON.stringify({ $schema: './headroom-setup.schema.json', ...JSON.parse(writeSetupFile(starting)) });
    const reading = readSetupFile(`\uFEFF${text}`);
    expect(reading).toEqual({ ok: true, value: starting });
  });

  test('that is cut off says where it stops making sense', () => {
    const text = writeSetupFile(starting);
    expect(faultsOf(text.slice(0, text.length / 2))).toEqual([expect.stringMatching(/not JSON, or was cut off/)]);
    expect(faultsOf('{\n  "format": "headroom-setup"\n  "version": 1\n}')).toEqual([
      expect.stringMatching(/at line 3/),
    ]);
    expect(faultsOf('  ')).toEqual(['The file is empty. Choose a file saved by Setup.']);
  });

  test.each(['[]', '3', 'null', '"text"', '{"format":"something-else"}'])('%s is no setup file', (text) => {
    expect(faultsOf(text)).toEqual([expect.stringMatching(/not a setup file/)]);
  });

  test('of a later version is refused whole, however much of it could be read', () => {
    const later = JSON.stringify({ ...JSON.parse(writeSetupFile(starting)), version: 2 });
    expect(faultsOf(later)).toEqual([expect.stringMatching(/version 2, and this program reads version 1/)]);
  });

  test('that is all faults is refused without being looked through', () => {
    const head = '{"format":"headroom-setup","version":1,"venues":[';
    for (const text of [
      `${head}${'{},'.repeat(600_000)}{}]}`,
      `${head}${'['.repeat(300_000)}${']'.repeat(300_000)}]}`,
    ]) {
      const read = readSetupFile(text);
      expect(read.ok ? [] : read.faults.map(({ message }) => message)).toEqual([
        expect.stringMatching(/more than any/),
      ]);
    }
    const many = readSetupFile(`${head}${'{},'.repeat(20_000)}{}]}`);
    expect(many.ok ? 0 : many.faults.length).toBeLessThanOrEqual(500);
  });

  test('with several faults names them all', () => {
    const spoiled: Record<string, unknown> = { ...JSON.parse(writeSetupFile(starting)), alerts: { leadMinutes: 0 } };
    delete spoiled.costs;
    expect(faultsOf(JSON.stringify(spoiled))).toHaveLength(2);
  });

  test('is never half taken: any text gives the whole setup or only faults', () => {
    const parts = fc.record(
      { format: fc.constant('headroom-setup'), version: fc.constant(1), store: fc.anything(), venues: fc.anything() },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(parts, (part) => {
        const reading = readSetupFile(JSON.stringify({ ...JSON.parse(writeSetupFile(starting)), ...part }));
        if (reading.ok) expect(Object.keys(reading.value satisfies Setup)).toEqual(Object.keys(starting));
        else expect(reading.faults.length).toBeGreaterThan(0);
      }),
    );
  });
});
