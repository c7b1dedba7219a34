import { tidyVin } from '../../domain/vin/read-vin.ts';
import { vinSchema } from '../../domain/vin/vin.ts';
import { isBlankCell } from '../columns/blank-cell.ts';

/** "Total", "Grand total:", "Totals (30 lots)", "Average"; not "Total loss", which is a state of a car. */
const LABEL = /^(?:(?:grand|sub|page|sale|overall)[\s-]*)?totals?(?:\s*\(?\s*\d[\d,]*\s*\w*\s*\)?)?\s*[:=]?$/i;
const OTHER_LABEL = /^(?:sum|average|avg\.?|mean|median|count|number of (?:lots|cars|units|rows))\s*[:=]?$/i;
/** What stands under the columns of a sum: a figure, and how many there are. */
const FIGURE = /^[$€(-]?\s*-?\d[\d.,\s]*\)?\s*(?:%|mi|miles|km|lots|cars|units|rows)?$/i;

/** Whether a row adds up those above it and names no lot: a label first, then only figures. */
export function isTotalsRow(cells: readonly string[]): boolean {
  const [first, ...others] = cells.filter((cell) => !isBlankCell(cell)).map((cell) => cell.trim().slice(0, 60));
  if (first === undefined || !(LABEL.test(first) || OTHER_LABEL.test(first))) return false;
  return others.every((cell) => (FIGURE.test(cell) || LABEL.test(cell)) && !vinSchema.safeParse(tidyVin(cell)).success);
}
