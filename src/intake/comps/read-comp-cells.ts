import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseYear } from '../../domain/lot/parse-year.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { Comp, CompDifference } from '../../domain/retail/comp.ts';
import { type LocalDate, localTimeSchema } from '../../domain/time/local-date.ts';
import { writtenDate } from '../../domain/time/written-date.ts';
import type { CompColumn } from './comp-columns.ts';

/** The cells of one row that say something. */
export type CompCells = Readonly<Partial<Record<CompColumn, string>>>;

/**
 * One comparable from its cells, or what is wrong with the first that can't be read.
 * @param priceHeading as the table heads its prices; "Asking price" says what no column of kinds says
 */
export function readCompCells(cells: CompCells, today: LocalDate, priceHeading: string): Outcome<Comp> {
  const price = parseMoney(cells.price ?? '');
  if (!price.ok) return refuse('price', `Price: ${price.message}`);
  if (price.value <= 0) return refuse('price', 'Price: it must be above $0.');
  const kind = kindOf(cells.kind ?? priceHeading);
  if (cells.kind !== undefined && kind === undefined) {
    return refuse('kind', `“${cells.kind}” is neither sold nor asking. Write one of the two.`);
  }
  const miles = readIf(cells.miles, parseMiles);
  if (!miles.ok) return refuse('miles', `Miles: ${miles.message}`);
  const year = readIf(cells.year, (text) => parseYear(text, Number(today.slice(0, 4))));
  if (!year.ok) return refuse('year', `Year: ${year.message}`);
  const date = readIf(cells.date, (text) => pastDate(text, today));
  if (!date.ok) return refuse('date', `Date: ${date.message}`);
  const days = readIf(cells.days, daysListed);
  if (!days.ok) return days;
  const differences = readIf(cells.differences, readDifferences);
  if (!differences.ok) return differences;
  return ok({
    // Nothing says that it sold: an asking price is the more careful reading, because it is brought down.
    kind: kind ?? 'asking',
    price: price.value,
    ...(miles.value !== undefined && { miles: miles.value }),
    ...(year.value !== undefined && { year: year.value }),
    ...(date.value !== undefined && { date: date.value }),
    ...(days.value !== undefined && { daysListed: days.value }),
    ...(cells.source !== undefined && { source: cells.source.slice(0, 200) }),
    differences: differences.value ?? [],
    leftOut: false,
  });
}

function readIf<Value>(text: string | undefined, read: (text: string) => Outcome<Value>): Outcome<Value | undefined> {
  return text === undefined ? ok(undefined) : read(text);
}

/** "For sale" is asked for, "sale" and "sold" are done. */
function kindOf(text: string): Comp['kind'] | undefined {
  if (/\b(?:ask|asking|asked|list|listed|listing|offer|offered|for sale|active|open)\b/i.test(text)) return 'asking';
  return /\b(?:sold|sale|selling|sells|closed|done)\b/i.test(text) ? 'sold' : undefined;
}

const MIDNIGHT = localTimeSchema.parse('00:00');

function pastDate(text: string, today: LocalDate): Outcome<LocalDate> {
  if (!/\d{4}|\d[-/.]\d{1,2}[-/.]\d\d/.test(text)) return refuse('no-year', `write “${text}” with its year.`);
  const date = writtenDate(text, MIDNIGHT, { date: today, time: MIDNIGHT });
  if (!date.ok) return date;
  return date.value > today ? refuse('ahead', `${date.value} is still to come. Check it.`) : date;
}

function daysListed(text: string): Outcome<number> {
  const days = /^(\d{1,4})(?: ?d(?:ays?)?)?$/i.exec(text)?.[1];
  if (days === undefined || Number(days) > 3650) return refuse('days', `“${text}” is not a number of days.`);
  return ok(Number(days));
}

/** "Tow package +450; no rack -300". */
function readDifferences(text: string): Outcome<CompDifference[]> {
  const found: CompDifference[] = [];
  for (const part of text.split(';')) {
    if (part.trim() === '') continue;
    const [, label, written] = /^(.*?)\s*([-+−]\s*\$?\s*[\d.,]+k?|\(\$?[\d.,]+\))$/.exec(part.trim()) ?? [];
    const amount = written === undefined ? undefined : parseMoney(written);
    if (label === undefined || label === '' || amount?.ok !== true) {
      return refuse(
        'differences',
        `“${part.trim()}” is not a difference with its amount. Write it as “Tow package +450”.`,
      );
    }
    found.push({ label: label.slice(0, 80), cents: amount.value });
  }
  return ok(found);
}
