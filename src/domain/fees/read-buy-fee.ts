import { type FeeTableReading, readFeeTable } from './read-fee-table.ts';

/**
 * Reads what a buyer pays on top of the hammer price: a pasted fee table, or one fee that holds at every price, such as
 * "$250", "2.5%" or "$100 + 2%, max $600".
 */
export function readBuyFee(text: string): FeeTableReading {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');
  const [only = ''] = lines;
  return lines.length === 1 && ONE_FEE.test(only) ? readFeeTable(`0 and up ${only.trim()}`) : readFeeTable(text);
}

/** An amount, a percentage or both, with or without limits. A plus sign close behind a figure is "and up" instead. */
const ONE_FEE =
  /^\s*(\$?\s*[\d,]+(\.\d+)?\s*%?|free|none)(\s+(\+|plus)\s*\$?\s*[\d,]+(\.\d+)?\s*%?)?(\s*[,(]?\s*(min|max|at least|at most)\b.*)?\s*$/i;
