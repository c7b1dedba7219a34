import { writeFileSync } from 'node:fs';
import * as z from 'zod/mini';
import { type SetupSection, setupFileSchema } from '../src/domain/setup/setup.ts';

/** The checked-in JSON Schema of a setup file, for editors and for whoever writes one by hand. */
export const SETUP_SCHEMA_FILE = 'manifest/setup.schema.json';

/** What each section is for; the fields describe themselves where they are declared. */
const SECTIONS: Record<SetupSection, string> = {
  store: 'the dealership, and the time zone in which every close is shown',
  venues: 'the places that sell: time zone, fees, bid increments and transport',
  feeSchedules: 'buy fees; each schedule has rates with the sale dates on which they apply',
  titles: 'titles: the share of clean retail each brings, and whether it can be floor-planned',
  rules: 'the minimum profit that makes a deal worth doing; the largest of the three counts',
  costs: 'costs of every car',
  undone: 'how often a sale is canceled, and what is not refunded',
  reconTemplates: 'recon lines by class of car, to be added to a lot; optional',
  carrying: 'what it costs to hold a car: lender, own cash, lot space, days to sell',
  stock: 'how long the dealer’s own cars took to sell, unsold ones included; optional',
  estimation: 'how retail is worked out from comparables and how doubts are counted; optional',
  corrections: 'what the dealer’s own results correct, as it was switched on under Learn; optional',
  rush: 'hours in store time when the people who bid are with customers',
  alerts: 'when to remind before a close',
  sites: 'sale sites: their venues, and where on their pages a value was pointed at; optional',
  books: 'account names, and which costs are part of a car’s cost; optional',
  vendors: 'who sends bills, and when each wants to be paid',
  certificates: 'resale certificates by state, and the venues that have each on file; optional',
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
      'A dealer’s setup for Headroom. Money is in whole cents, and the field’s name says so. Rates and shares are in parts per million (ppm): 80000 is 8%.',
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
