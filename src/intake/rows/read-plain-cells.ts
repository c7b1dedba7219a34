import type { LotFacts } from '../../domain/lot/lot.ts';
import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseYear } from '../../domain/lot/parse-year.ts';
import type { Outcome } from '../../domain/outcome.ts';
import { checkDigitMatches, expectedCheckDigit } from '../../domain/vin/check-digit.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import { unitInHeading } from '../columns/heading-unit.ts';
import { readAmount } from './read-amount.ts';
import type { ReadContext } from './read-context.ts';
import type { RowContext } from './row-context.ts';
import type { Cell, RowDraft } from './row-draft.ts';
import { shorten } from './shorten.ts';

export function readVinCell(cell: Cell, draft: RowDraft): void {
  if (/^\d(?:[.,]\d+)?e\+?\d+$/i.test(cell.text)) {
    draft.unread(
      cell,
      'A spreadsheet has turned this VIN into a number, and its digits are lost. Copy it from the sale.',
    );
    return;
  }
  const vin = readVin(cell.text);
  if (!vin.ok) {
    draft.unread(cell, vin.message);
    return;
  }
  const right = checkDigitMatches(vin.value);
  draft.set('vin', vin.value, cell, right ? 'certain' : 'doubtful');
  if (!right) {
    const expected = expectedCheckDigit(vin.value);
    draft.question(
      cell,
      `Position 9 should be ${expected}, is ${vin.value.charAt(8)}: a typing error, or not a US-market car. Compare it with the listing.`,
    );
  }
}

export function readYearCell(cell: Cell, draft: RowDraft, context: ReadContext): void {
  take('year', parseYear(cell.text, new Date(context.now).getUTCFullYear()), cell, draft);
}

export function readMilesCell(cell: Cell, draft: RowDraft, { decimal, unitIn }: RowContext): void {
  const unit = unitIn(cell.heading, () => unitInHeading(cell.heading));
  if (unit !== null) {
    draft.unread(
      cell,
      `The heading “${shorten(cell.heading, 60)}” says “${unit}”. Write the miles of this column in full.`,
    );
    return;
  }
  const kilometres = cell.field === 'kilometres' && !/[a-z]/i.test(cell.text);
  const text = kilometres ? `${cell.text} km` : cell.text;
  take('miles', parseMiles(text, decimal === undefined ? {} : { decimal }), cell, draft);
}

export function readMoneyCell(cell: Cell, field: Amount, draft: RowDraft, context: RowContext): void {
  const amount = readAmount(cell, context);
  if (field === 'increment' && amount.ok && amount.value === 0) {
    draft.unread(cell, 'An increment can’t be $0. Write the increment, or leave it out.');
    return;
  }
  take(field, amount, cell, draft);
}

/** Text for one of the short fields; what does not fit is kept whole in the notes. */
export function readTextCell(
  cell: Cell,
  field: 'make' | 'model' | 'trim' | 'lotNumber' | 'sale' | 'seller' | 'location' | 'venueName',
  draft: RowDraft,
): void {
  const text = /[\n\r\t]/.test(cell.text) ? cell.text.replace(/\s+/g, ' ').trim() : cell.text;
  if (text.length <= 200) {
    draft.set(field, text, cell);
    return;
  }
  draft.set(field, shorten(text, 200), cell, 'doubtful');
  draft.question(cell, 'Only the first 199 characters fit here; all of it is in the notes.');
  draft.note(`${cell.heading}: ${text}`);
}

/** "2021 Larkspur Hauler 250 Crew": the year in front, or behind; then one word of make, and the rest is the model. */
export function readCarCell(cell: Cell, draft: RowDraft, context: ReadContext): void {
  const words = cell.text.split(/\s+/);
  const thisYear = new Date(context.now).getUTCFullYear();
  const [first, last] = [parseYear(words[0] ?? '', thisYear), parseYear(words.at(-1) ?? '', thisYear)];
  const year = first.ok ? first : /^\d{4}$/.test(words.at(-1) ?? '') ? last : first;
  if (year.ok && draft.facts.year === undefined) draft.set('year', year.value, cell, 'likely');
  const name = first.ok ? words.slice(1) : year.ok ? words.slice(0, -1) : words;
  const [make, ...model] = name;
  const fits = make !== undefined && name.join(' ').length <= 200;
  if (!fits) {
    draft.unread(cell, 'No make and model found. Put them in their own columns.');
    return;
  }
  if (draft.facts.make === undefined) draft.set('make', make, cell, 'likely');
  if (model.length > 0 && draft.facts.model === undefined) draft.set('model', model.join(' '), cell, 'likely');
}

export function readFundingCell(cell: Cell, draft: RowDraft): void {
  if (/^(?:floor(?:ed|\s*-?plan)?|flooring)$/i.test(cell.text)) draft.set('funding', 'floor', cell);
  else if (/^(?:own )?cash$/i.test(cell.text)) draft.set('funding', 'cash', cell);
  else draft.unread(cell, 'Write “floor” or “cash”.');
}

export function readPageCell(cell: Cell, draft: RowDraft): void {
  if (/^https?:\/\/\S+$/i.test(cell.text) && cell.text.length <= 2000) draft.set('pageUrl', cell.text, cell);
  else draft.unread(cell, 'This is not a web address beginning with http. Copy it from the browser.');
}

type Amount = 'priceNow' | 'increment' | 'transport' | 'proxy';

function take<Field extends 'year' | 'miles' | Amount>(
  field: Field,
  outcome: Outcome<NonNullable<LotFacts[Field]>>,
  cell: Cell,
  draft: RowDraft,
): void {
  if (!outcome.ok) {
    draft.unread(cell, outcome.message);
    return;
  }
  const dollars = field !== 'year' && field !== 'miles' && String(outcome.value / 100) === cell.text;
  if (dollars) draft.facts[field] = outcome.value;
  else draft.set(field, outcome.value, cell);
}
