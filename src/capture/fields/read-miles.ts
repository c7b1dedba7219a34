import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { labelRoles } from '../roles/label-roles.ts';
import { clauseBefore } from '../text/clause.ts';
import { type Pair, pairText } from '../text/pair.ts';
import { type DistanceToken, distancesIn, FIGURE } from '../tokens/distance-tokens.ts';
import type { FieldReader, LotSource } from './field-reader.ts';

/** What a page calls miles that are not this car's true ones. */
const NOT_ACTUAL =
  /\b(?:tmu|true mileage unknown|not actual|exempt|inop\w*|unreadable|exceeds|broken|unknown|unverified|rolled|replaced|swapped|not the actual|n\.?a\.?m\.?)\b/i;
const ABOUT =
  /~|≈|\b(?:approx\w*|about|around|circa|roughly|nearly|some|est\w*|under|over|almost|less than|more than|up to|says about|thousand)\b|\+(?!\d)/i;
/** Distances and promises that are not this car's odometer. */
const NOT_ODOMETER =
  /\b(?:away|within|radius|from (?:you|your|here|the)|warranty|servic\w*|interval|due|transport\w*|ship\w*|deliver\w*|haul(?:ing|ed|age)?\b|tow\w*|a mile|per mile|mpg|range|charge|drive home|pick-?up|tires?|brakes?|replaced|ago|since|rebuilt (?:engine|motor|trans\w*)|new (?:motor|engine)|engine (?:at|with)|last|each|every|next|at \d|stolen|under \d|filter|search|sort|max\w*|min\w*|sister|was told|similar|belts?|oil|in \d{4})\b/i;
/** Labels of an odometer that is not this car's. */
const OF_ANOTHER = /\b(?:donor|swap(?:ped)?|sister|other|replaced|previous)\b/i;
const LEAST = 100;

/** The odometer in whole miles, from its label, from a figure with a unit, or from the one figure that can be nothing else. */
export const readMiles: FieldReader = (source, into) => {
  const metric = source.lines.some((line) => /\d ?(?:km|kms)\b|kilomet|kilomèt|kilómet/i.test(line.text));
  let unknown = false;
  for (const pair of source.pairs) {
    const { fact, money } = labelRoles(pair.label);
    const weight = Math.max(fact.get('miles') ?? 0, fact.get('kilometers') ?? 0);
    if (
      OF_ANOTHER.test(pair.label) ||
      weight === 0 ||
      (money.size > 0 && weight < 1) ||
      (fact.get('other') ?? 0) > weight
    )
      continue;
    if (NOT_ACTUAL.test(`${pair.value} ${pair.after}`)) unknown = true;
    const read = labeled(pair, source, { metric, km: (fact.get('kilometers') ?? 0) >= weight });
    if (read === null || read.miles <= 0) continue;
    into.add(
      'miles',
      { value: read.miles, from: pair.from, text: pairText(pair), score: read.score * weight },
      pair.node,
    );
  }
  for (const line of source.factLines) {
    if (line.text.length > 1500) continue;
    for (const token of distancesIn(line.text, source.decimal)) {
      const score = inLine(token, line.text) * (line.prose ? 0.92 : 1);
      if (score > 0 && token.miles >= LEAST) {
        into.add(
          'miles',
          { value: token.miles, from: 'page-text', text: around(line.text, token), score, prose: line.prose },
          line.element,
        );
      }
    }
  }
  unnamed(source, into);
  // What the page says nobody knows is not known because a figure stands beside it.
  if (unknown) into.doubt('miles', 0.35);
};

function labeled(
  pair: Pair,
  { decimal }: LotSource,
  { metric, km }: { readonly metric: boolean; readonly km: boolean },
): { readonly miles: number; readonly score: number } | null {
  const value = pair.value.slice(0, 160).replace(/\n/g, ' ');
  const tokens = distancesIn(value, decimal);
  const withAfter = tokens.length > 0 ? tokens : distancesIn(`${value} ${pair.after}`, decimal);
  const doubt = NOT_ACTUAL.test(`${value} ${pair.after}`) || ABOUT.test(value.replace(/\(.*\)/, ''));
  const together = oneOf(withAfter);
  if (together !== null) {
    return { miles: together.miles, score: doubt || together.rough ? 0.4 : pair.prose ? 0.85 : 0.97 };
  }
  if (withAfter.length > 0) return null;
  const bare = new RegExp(
    String.raw`^(?:abt\.? |approx\.? )?(${FIGURE})( ?k\b)?(?=$|[\s(;]|,(?:\s|$)|\*(?:\s|$)|\.(?:\s|$))`,
    'iu',
  ).exec(value);
  if (bare === null || /^\s*\S*\d{3}/.test(value.slice(bare[0].length))) return null;
  const figure = (bare[1] ?? '')
    .replaceAll('’', "'")
    .replace(/^(\d{1,2}(?:,\d\d)+,\d{3})$/, (lakhs) => lakhs.replaceAll(',', ''));
  const read = parseMiles(`${figure}${bare[2] ?? ''}${km ? ' km' : ''}`, decimal === undefined ? {} : { decimal });
  if (!read.ok) return null;
  if (bare[2] !== undefined || doubt) return { miles: read.value, score: 0.4 };
  const saysMiles = /\b(?:miles?|mi)\b/i.test(pair.label);
  return { miles: read.value, score: km ? 0.85 : saysMiles ? 0.95 : metric ? 0.45 : 0.84 };
}

/** One reading; in miles and kilometers both, the miles if they agree. Null when there is not exactly one. */
function oneOf(tokens: readonly DistanceToken[]): DistanceToken | null {
  const miles = tokens.filter((token) => !token.metric);
  const [first] = miles.length > 0 ? miles : tokens;
  if (first === undefined || new Set((miles.length > 0 ? miles : tokens).map((token) => token.miles)).size > 1)
    return null;
  const agree = tokens.every((other) => Math.abs(other.miles - first.miles) <= first.miles * 0.01 + 1);
  return agree ? first : { ...first, rough: true };
}

/** How likely a figure with a unit in a line is this car's odometer; 0 for what is surely something else. */
function inLine(token: DistanceToken, text: string): number {
  const before = clauseBefore(text.slice(0, token.start));
  const after = text.slice(token.end, token.end + 40).split(/(?<!^\s?)[,;|•·]|\. /u, 1)[0] ?? '';
  if (NOT_ODOMETER.test(before.slice(-30)) || NOT_ODOMETER.test(after.slice(0, 24))) return 0;
  if (token.rough || ABOUT.test(before.slice(-14)) || NOT_ACTUAL.test(text)) return 0.35;
  return token.miles < 500 ? 0.4 : 0.88;
}

/** A plain figure of the size of an odometer that only an unknown word names, where there is exactly one and no miles are read. */
function unnamed({ pairs, decimal }: LotSource, into: Parameters<FieldReader>[1]): void {
  if (into.of('miles').some((reading) => reading.score > 0.4)) return;
  const found = pairs.flatMap((pair) => {
    const { fact, money, time } = labelRoles(pair.label);
    if (fact.size > 0 || money.size > 0 || time.size > 0 || pair.prose) return [];
    if (!/^\d{1,3},\d{3}$/.test(pair.value.trim())) return [];
    const read = parseMiles(pair.value, decimal === undefined ? {} : { decimal });
    return read.ok && read.value >= 1000 && read.value <= 400_000 ? [{ pair, value: read.value }] : [];
  });
  const [first] = found;
  if (first === undefined || new Set(found.map((one) => one.value)).size > 1) return;
  into.add(
    'miles',
    { value: first.value, from: first.pair.from, text: pairText(first.pair), score: 0.6 },
    first.pair.node,
  );
}

const around = (text: string, { start, end }: DistanceToken): string =>
  text.slice(Math.max(0, start - 60), end + 40).trim();
