import { parseYear } from '../../domain/lot/parse-year.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import { modelYearOf } from '../../domain/vin/vin-year.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { ReadFrom } from '../draft/draft-lot.ts';
import type { Line } from '../text/lines.ts';
import { isSetApart, type Pair, pairText } from '../text/pair.ts';
import { isPlainValue } from './read-words.ts';
import { readVehicleName } from './vehicle-name.ts';

/** A line that may name the whole car. */
export interface NameText {
  readonly text: string;
  readonly from: ReadFrom;
  /** A headline of the page, which names the car as plainly as a label would. */
  readonly headline?: boolean;
}

/** Year, make and model: each from its label, and together from a line that names the car. */
export function readNames(
  pairs: readonly Pair[],
  names: readonly NameText[],
  known: { readonly thisYear: number; readonly makes: readonly string[] },
  into: Candidates,
): void {
  for (const pair of pairs) readLabelled(pair, known.thisYear, into);
  const makes = [...into.of('make').map((reading) => reading.value), ...known.makes];
  for (const { text, from, headline } of names) {
    const name = readVehicleName(text, known.thisYear + 2, makes);
    if (name === null) continue;
    const sure = name.knownMake ? 'likely' : 'doubtful';
    into.add('year', {
      value: name.year,
      from,
      text,
      sure: headline === true || yearFitsVin(name.year, known.thisYear, into) ? 'certain' : 'likely',
    });
    into.add('make', { value: name.make, from, text, sure });
    if (name.model !== '') into.add('model', { value: name.model, from, text, sure });
  }
}

function readLabelled(pair: Pair, thisYear: number, into: Candidates): void {
  if (pair.meaning === 'year' && !pair.prose && pair.how !== 'trailing') {
    const read = parseYear(pair.value.split(/[\s,]/, 1)[0] ?? '', thisYear);
    if (!read.ok || read.value < 1900) return;
    into.add('year', {
      value: read.value,
      from: pair.from,
      text: pairText(pair),
      sure: pair.how === 'run-on' ? 'likely' : 'certain',
    });
  }
  if ((pair.meaning === 'make' || pair.meaning === 'model') && isSetApart(pair)) {
    const value = pair.value.split('\n')[0] ?? '';
    if (!isPlainValue(value, 60) || /^\d+ (?:results?|vehicles?)/i.test(value)) return;
    into.add(pair.meaning, { value, from: pair.from, text: pairText(pair), sure: 'certain' });
  }
}

/** Whether the only VIN read so far can be of that model year. */
function yearFitsVin(year: number, thisYear: number, into: Candidates): boolean {
  const vins = new Set(into.of('vin').map((reading) => reading.value));
  const [only] = vins;
  const vin = vins.size === 1 && only !== undefined ? readVin(only) : undefined;
  return vin?.ok === true && modelYearOf(vin.value, 'unknown', thisYear).candidates.includes(year);
}

/** The lines that name a lot: headings that read like a car, or where none does, other lines that do. */
export function nameLines(lines: readonly Line[], newest: number): readonly NameText[] {
  const named = lines.filter(
    (line) => !line.prose && line.text.length <= 120 && readVehicleName(line.text, newest, []) !== null,
  );
  const headings = named.filter((line) => line.heading > 0 && line.heading <= 4);
  return (headings.length > 0 ? headings : named).slice(0, 200).map((line) => ({
    text: line.text,
    from: 'page-text',
    headline: line.heading === 1 || line.heading === 2,
  }));
}
