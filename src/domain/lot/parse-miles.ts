import { type DecimalMark, LONGEST_FIGURE, readWrittenNumber, tidyFigure } from '../money/written-number.ts';
import { type Outcome, ok, refuse } from '../outcome.ts';

/** The most that a lot's odometer may say. */
export const MOST_MILES = 2_000_000;

/** International mile; exact by definition since 1959. */
const METRES_PER_MILE = 1609.344;

const READING =
  /^(?:odo(?:meter)?:? )?(?<figure>[\d.,' ]*\d[\d.,]*) ?(?<thousands>k(?!\w)|k(?=mi)|thousand)? ?(?:\(?actual\)? ?)?(?<unit>miles?|mi\.?|mls\.?|km\.?|kms|kilomet(?:er|re)s?)?(?: ?\(?actual\)?)?$/i;
const UNKNOWN = /\b(?:tmu|unknown|exempt|not actual|nam|inop(?:erable)?|illegible|broken|unreadable)\b/i;

/**
 * Reads an odometer as whole miles: "45,210 mi", "72k", "116.000 km" (converted and rounded to the nearest mile).
 * Tenths are dropped, as an odometer drops them. A mileage stated as unknown, exempt or not actual is refused as such:
 * it is a statement about the title, not a number.
 * @param options.decimal says which mark stands before decimals where it is known
 */
export function parseMiles(text: string, options: { readonly decimal?: DecimalMark } = {}): Outcome<number> {
  const tidy = tidyFigure(text);
  if (tidy === '') return refuse('empty', 'Write the miles, such as 72,500.');
  if (UNKNOWN.test(tidy)) {
    return refuse(
      'unknown-miles',
      `“${shown(tidy)}” says that the true miles are not known. Leave the miles empty and note it.`,
    );
  }
  const parts = tidy.length > LONGEST_FIGURE ? undefined : READING.exec(tidy)?.groups;
  if (parts === undefined) return notMiles(tidy);
  const { figure = '', thousands, unit = '' } = parts;
  const kilometres = /^k/i.test(unit);
  const number = readWrittenNumber(figure, options.decimal ?? likelyMark(figure, kilometres, thousands !== undefined));
  if (!number.ok) return number;
  const stated = Number(`${number.value.whole}.${number.value.fraction}`) * (thousands === undefined ? 1 : 1000);
  const miles = kilometres ? Math.round((stated * 1000) / METRES_PER_MILE) : Math.floor(roundedToTenths(stated));
  if (miles > MOST_MILES)
    return refuse('too-large', `“${tidy}” is more than ${MOST_MILES.toLocaleString('en-US')} miles. Check the digits.`);
  return ok(miles);
}

/** Kilometers come from where a point sets off thousands, and no odometer shows meters: 116.000 km is 116,000. */
function likelyMark(figure: string, kilometres: boolean, thousands: boolean): DecimalMark | undefined {
  if (thousands) return '.';
  return kilometres && /^\d{1,3}(?:\.\d{3})+$/.test(figure) ? ',' : undefined;
}

/** 72.3 × 1000 must not fall to 72,299 on its way through binary fractions. */
const roundedToTenths = (value: number) => Math.round(value * 10) / 10;

const shown = (tidy: string) => (tidy.length > LONGEST_FIGURE ? `${tidy.slice(0, LONGEST_FIGURE)}…` : tidy);

const notMiles = (tidy: string) =>
  refuse('not-miles', `“${shown(tidy)}” is not a mileage. Write whole miles, such as 72,500.`);
