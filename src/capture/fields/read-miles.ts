import { parseMiles } from '../../domain/lot/parse-miles.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { Sure } from '../draft/draft-lot.ts';
import type { Line } from '../text/lines.ts';
import { type Pair, pairText } from '../text/pair.ts';

const FIGURE = String.raw`\d{1,3}(?:[,.' ]\d{3}){1,2}(?:\.\d)?|\d{1,7}(?:\.\d)?`;
const MILES_UNIT = String.raw`mi\b\.?|miles?\b|mls?\b\.?|millas\b|ميل|מייל`;
const KM_UNIT = String.raw`kms?\b\.?|kilomet(?:er|re)s?\b|kilómetros\b|كم|كيلومتر|ק["״]מ`;
const READING = new RegExp(
  String.raw`(?<![\d.,$#/-])(${FIGURE})( ?k)? ?(?:actual )?(?:(${MILES_UNIT})|(${KM_UNIT}))(?!/|\s?(?:p\.?h|/h|per)\b)`,
  'giu',
);
const NOT_ACTUAL =
  /\b(?:tmu|true mileage unknown|not actual|exempt|inop\w*|unreadable|exceeds|broken|unknown|unverified)\b/i;
const ABOUT = /~|≈|\b(?:approx\w*|about|around|circa|est\w*)\b|\+/i;
// Distances and promises that are not this car's odometer.
const NOT_ODOMETER =
  /\b(?:away|within|radius|from you|from your|distance|warranty|service|serviced|interval|due|transport\w*|ship\w*|deliver\w*|haul\w*|tow\w*|per mile|mpg|range|charge|drive home|pick-?up|new tires|replaced|ago|since|rebuilt at|engine (?:at|with))\b/i;

/** The odometer in whole miles, from its label or from a figure with a unit that can be nothing else. */
export function readMiles(
  pairs: readonly Pair[],
  lines: readonly Line[],
  decimal: DecimalMark | undefined,
  into: Candidates,
): void {
  const metric = lines.some((line) => /\d ?(?:km|kms)\b|kilomet/i.test(line.text));
  for (const pair of pairs) {
    if (pair.meaning !== 'miles' && pair.meaning !== 'kilometres') continue;
    if (/distance/i.test(pair.label) && NOT_ODOMETER.test(pair.value)) continue;
    const reading = labelled(pair, decimal, metric);
    // A page shows 0 where it does not know, or does not know yet.
    if (reading !== null && reading.value > 0) into.add('miles', { ...reading, from: pair.from, text: pairText(pair) });
  }
  if (into.of('miles').some((reading) => reading.sure !== 'doubtful')) return;
  for (const line of lines) {
    if (line.prose || line.text.length > 160 || NOT_ODOMETER.test(line.text)) continue;
    const found = milesIn(line.text, decimal);
    if (found === null || found.value < 500) continue;
    const sure = found.sure === 'doubtful' || NOT_ACTUAL.test(line.text) ? 'doubtful' : 'likely';
    into.add('miles', { value: found.value, sure, from: 'page-text', text: line.text });
  }
}

interface Miles {
  readonly value: number;
  readonly sure: Sure;
}

function labelled(pair: Pair, decimal: DecimalMark | undefined, metric: boolean): Miles | null {
  const value = pair.value.slice(0, 120).replace(/\n/g, ' ');
  const withUnit = milesIn(value, decimal) ?? milesIn(`${value} ${pair.after}`, decimal);
  const plain = withUnit ?? withoutUnit(pair, value, decimal, metric);
  if (plain === null) return null;
  if (pair.prose || NOT_ACTUAL.test(`${value} ${pair.after}`) || ABOUT.test(value))
    return { ...plain, sure: 'doubtful' };
  const loose = pair.how === 'run-on' || pair.how === 'trailing';
  return loose && plain.sure === 'certain' ? { ...plain, sure: 'likely' } : plain;
}

/** The reading with a unit; in miles and kilometers both, the miles if they agree. Null when there is not exactly one. */
function milesIn(text: string, decimal: DecimalMark | undefined): Miles | null {
  const miles = new Set<number>();
  const converted = new Set<number>();
  let rough = false;
  for (const [, figure = '', thousands, mi, km] of text.matchAll(READING)) {
    const written = `${figure}${thousands === undefined ? '' : 'k'} ${km === undefined ? 'mi' : 'km'}`;
    const read = parseMiles(written, decimal === undefined ? {} : { decimal });
    if (!read.ok) continue;
    if (thousands !== undefined) rough = true;
    (mi === undefined ? converted : miles).add(read.value);
  }
  const [value] = miles.size > 0 ? miles : converted;
  if (value === undefined || miles.size > 1 || (miles.size === 0 && converted.size > 1)) return null;
  const agree = miles.size === 0 || [...converted].every((other) => Math.abs(other - value) <= value * 0.01 + 1);
  return { value, sure: rough || !agree ? 'doubtful' : 'certain' };
}

/** A bare figure is in the unit of its label; "odometer" alone means miles unless the page counts in kilometers. */
function withoutUnit(pair: Pair, value: string, decimal: DecimalMark | undefined, metric: boolean): Miles | null {
  if (pair.how === 'trailing') return null;
  const bare = new RegExp(String.raw`^(${FIGURE})( ?k\b)?(?=$|[\s(;]|,(?:\s|$)|\*(?:\s|$))`, 'iu').exec(value);
  if (bare === null || /^\s*\S*\d{3}/.test(value.slice(bare[0].length))) return null;
  const km = pair.meaning === 'kilometres';
  const read = parseMiles(`${bare[0]}${km ? ' km' : ''}`, decimal === undefined ? {} : { decimal });
  if (!read.ok) return null;
  if (bare[2] !== undefined) return { value: read.value, sure: 'doubtful' };
  const saysMiles = /\b(?:miles?|mi)\b/i.test(pair.label);
  if (km) return { value: read.value, sure: 'likely' };
  return { value: read.value, sure: saysMiles ? 'certain' : metric ? 'doubtful' : 'likely' };
}
