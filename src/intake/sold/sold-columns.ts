import { plainWords } from '../../domain/text/plain-words.ts';

export type SoldColumn = 'vin' | 'date' | 'price' | 'buyer';

/** Words that head a column, in plain lower case; the surer ones first. */
const HEADINGS: Readonly<Record<SoldColumn, readonly string[]>> = {
  vin: ['vin', 'vin number', 'vin no', 'serial number'],
  date: ['sold date', 'date sold', 'sale date', 'sold on', 'deal date', 'delivery date', 'date', 'sold'],
  price: ['sold price', 'sale price', 'sold for', 'selling price', 'retail price', 'price', 'amount', 'cash price'],
  buyer: ['sold to', 'sale type', 'deal type', 'type', 'buyer', 'channel'],
};

/** Which column holds what, by the headings; a column that is not there is undefined. */
export function soldColumnsOf(headings: readonly string[]): Readonly<Record<SoldColumn, number | undefined>> {
  const plain = headings.map((heading) => plainWords(heading));
  const place = (column: SoldColumn): number | undefined => {
    for (const words of HEADINGS[column]) {
      const at = plain.indexOf(words);
      if (at !== -1) return at;
    }
    return undefined;
  };
  return { vin: place('vin'), date: place('date'), price: place('price'), buyer: place('buyer') };
}
