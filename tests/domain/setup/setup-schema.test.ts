import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SETUP_SCHEMA_FILE, setupSchemaText } from '../../../scripts/setup-schema.ts';
import { setupFileSchema, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { readSetupFile } from '../../../src/domain/setup/setup-file.ts';

const example = readFileSync('tests/fixtures/setup-example.json', 'utf8');

describe('the checked-in schema of a setup file', () => {
  test('is the one the program reads by; if not, run `npm run fix`', () => {
    expect(readFileSync(SETUP_SCHEMA_FILE, 'utf8')).toBe(setupSchemaText());
  });

  test('says what every section is for', () => {
    const { properties } = JSON.parse(setupSchemaText());
    for (const section of Object.keys(setupSectionsSchema.shape)) {
      expect(properties[section]?.description, section).toMatch(/\w{4}/);
    }
  });

  test('leaves out what has a default, so that a short file will do', () => {
    const { properties, required } = JSON.parse(setupSchemaText());
    expect(required).not.toContain('estimation');
    expect(properties.rules.required).toEqual(['dollarsCents']);
  });
});

test('the example setup is one', () => {
  expect(readSetupFile(example)).toMatchObject({ ok: true, value: { store: { name: 'Cottonwood Truck & Van' } } });
  expect(setupFileSchema.safeParse(JSON.parse(example)).success).toBe(true);
});
