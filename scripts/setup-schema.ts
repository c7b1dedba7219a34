import { writeFileSync } from 'node:fs';
import * as z from 'zod/mini';
import { type SetupSection, setupFileSchema } from '../src/domain/setup/setup.ts';

/** The checked-in JSON Schema of a setup file, for editors and for whoever writes one by hand. */
export const SETUP_SCHEMA_FILE = 'manifest/setup.schema.json';

/** What each section is for; the fields describe themselves where they are declared. */
const SECTIONS: Record<SetupSection, string> = {
  store: 'the dealership, and the zone in which every close is shown',
  venues: 'the places that sell: zone, fees, price steps and transport home',
  feeSchedules: 'buyer’s fees, in editions that hold from one sale date to another',
  titles: 'title states: what each leaves of clean retail, and whether a lender takes it',
  rules: 'the least profit that makes a deal worth doing; all are checked and the largest binds',
  costs: 'costs that every car carries',
  undone: 'how often a win comes undone, and what does not come back when it does',
  carrying: 'what it costs to hold a car: lender, own cash, place on the lot, days to sell',
  stock: 'how long the dealer’s own cars took to sell, the unsold ones too; optional',
  estimation: 'how retail is worked out from comparables and how doubt is counted; optional',
  rush: 'hours in store time when the people who bid are with customers',
  alerts: 'when to call before a close',
  sites: 'sale sites: whose they are, and where on their pages a value was pointed at; optional',
  books: 'what the accounts are called, and which costs are part of a car’s cost; optional',
};

/**
 * The schema as text. Made from the very schema that reads the file; what JSON Schema can't say (ids that must differ,
 * bands that must be in order) is checked on reading only.
 */
export function setupSchemaText(): string {
  const { $schema, properties, ...rest } = z.toJSONSchema(setupFileSchema, { io: 'input' });
  const described = Object.fromEntries(
    Object.entries(properties ?? {}).map(([key, schema]) => {
      const description = Object.hasOwn(SECTIONS, key) ? SECTIONS[key as SetupSection] : undefined;
      return [key, description === undefined ? schema : { description, ...Object(schema) }];
    }),
  );
  const schema = {
    $schema,
    title: 'Headroom setup',
    description:
      'A dealer’s setup for Headroom. Money is in whole cents and every such field’s name says so; rates and shares are in parts per million (ppm): 80000 is 8 %.',
    ...rest,
    properties: described,
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}

/** Writes the schema anew, after the setup has changed. */
export async function run(): Promise<number> {
  writeFileSync(SETUP_SCHEMA_FILE, setupSchemaText());
  console.log(`Wrote ${SETUP_SCHEMA_FILE}.`);
  return 0;
}
