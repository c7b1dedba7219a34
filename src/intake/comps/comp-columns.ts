/** What a pasted comparable can say, in the order in which a table without headings is read. */
export const COMP_COLUMNS = ['price', 'kind', 'miles', 'year', 'date', 'days', 'source', 'differences'] as const;
export type CompColumn = (typeof COMP_COLUMNS)[number];

/** Words that head a column, in plain lower case. */
const HEADINGS: Readonly<Record<CompColumn, readonly string[]>> = {
  price: ['price', 'sold price', 'sale price', 'selling price', 'sold for', 'asking price', 'list price', 'amount'],
  kind: ['kind', 'sold or asking', 'sold asking', 'asking or sold', 'status', 'state', 'type'],
  miles: ['miles', 'mileage', 'odometer', 'odo', 'mi'],
  year: ['year', 'model year', 'yr', 'my'],
  date: ['date', 'sold on', 'sold date', 'date sold', 'sale date', 'seen', 'seen on', 'date seen', 'as of'],
  days: ['days', 'days listed', 'days for sale', 'days to sell', 'days on lot', 'age', 'age in days'],
  source: ['source', 'from', 'where', 'where from', 'where seen', 'dealer', 'seller', 'place'],
  differences: ['differences', 'difference', 'spec differences', 'adjustments', 'adjustment'],
};

/** The column that a heading names; undefined where it names none. */
export function compColumnOf(heading: string): CompColumn | undefined {
  const plain = heading
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();
  return COMP_COLUMNS.find((column) => HEADINGS[column].includes(plain));
}
