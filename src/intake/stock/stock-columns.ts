export type StockColumn = 'came' | 'sold' | 'label';

/** Words that head a column, in plain lower case. */
const HEADINGS: Readonly<Record<StockColumn, readonly string[]>> = {
  came: [
    'came',
    'arrived',
    'in',
    'in stock',
    'bought',
    'bought on',
    'date in',
    'days',
    'days on lot',
    'age',
    'stocked',
  ],
  sold: ['sold', 'sold on', 'date sold', 'sold date', 'out', 'date out', 'sale date', 'is sold'],
  label: ['car', 'vehicle', 'stock number', 'stock no', 'vin', 'what', 'model', 'description'],
};

/** What the columns hold, and whether the first row only names them. */
export function stockColumnsOf(first: readonly string[]): {
  readonly columns: readonly (StockColumn | undefined)[];
  readonly headed: boolean;
} {
  const named = first.map(columnOf);
  return named.includes('came')
    ? { columns: named, headed: true }
    : { columns: ['came', 'sold', 'label'], headed: false };
}

function columnOf(heading: string): StockColumn | undefined {
  const plain = heading
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();
  return (['came', 'sold', 'label'] as const).find((column) => HEADINGS[column].includes(plain));
}
