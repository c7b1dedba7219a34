import type { InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import { findVins } from '../../domain/vin/find-vins.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import { lookOfCells } from '../columns/look-of-cells.ts';
import { readInvoiceAmount } from './invoice-amount.ts';

/** Roles of columns that hold money. */
const MONEY: ReadonlySet<InvoiceRole> = new Set([
  'amount',
  'hammer',
  'fee',
  'transport',
  'other',
  'credit',
  'payment',
  'total',
]);

/**
 * What a column holds by its cells, where its heading says something else or nothing: VINs are found by what they are, a
 * column of words holds no money, and a column of figures no words.
 * @param heading as the file writes it
 * @param guess by the heading; null when it says nothing
 */
export function roleOfCells(heading: string, guess: InvoiceRole | null, cells: readonly string[]): InvoiceRole | null {
  const filled = cells.filter((cell) => !isBlankCell(cell));
  if (filled.length === 0) return guess;
  const share = (fits: (cell: string) => boolean) => filled.filter(fits).length / filled.length;
  if (nameCars(filled))
    return share((cell) => /\p{L}{3,}\s+\S/u.test(cell.replace(/\S{17,}/g, ''))) > HALF ? 'words' : 'vin';
  const look = lookOfCells(filled, { venues: [], titles: [] });
  if (look === 'date' || look === 'date-time') return 'date';
  if (guess === 'date') return 'date';
  const letters = share((cell) => /\p{L}/u.test(cell));
  if (guess !== null && MONEY.has(guess))
    return letters <= HALF || !MAY_BE_WORDS.test(heading) || filled.some(isAmount) ? guess : 'words';
  if (guess === 'words') return letters > HALF ? guess : null;
  if (guess === 'lot') return share((cell) => /\d/.test(cell)) > HALF ? guess : 'words';
  return guess;
}
const HALF = 0.5;
/** "Charge" heads the amounts of one venue and what another charges for. */
const MAY_BE_WORDS = /charge|fee|net|debit|credit/i;
const isAmount = (cell: string): boolean => readInvoiceAmount(cell, '', undefined).ok;

/** Whether most of the cells that say something hold a VIN whose check digit is right. */
export function nameCars(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => !isBlankCell(cell));
  return filled.filter((cell) => findVins(cell).some(checkDigitMatches)).length > filled.length * HALF;
}
