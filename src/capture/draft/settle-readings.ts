import type { DraftField, ReadFrom, Sure } from './draft-lot.ts';

/** A reading with how much speaks for it, 0 to 1. */
export interface ScoredReading<Value> {
  readonly value: Value;
  readonly from: ReadFrom;
  readonly text: string;
  readonly score: number;
  /** It stands in running text. */
  readonly prose?: boolean;
}

const KEPT = 6;
/** From which score on a value is said to be so sure, and how far it must stand before the next. Held to what pages by other hands gave. */
export const CERTAIN = 0.85;
export const LIKELY = 0.55;
const APART = 0.12;
const FAR_APART = 0.3;
/** A value that a second layer of the page says too. */
const SECOND_LAYER = 0.1;
/** Readings of less are not offered. */
const LEAST = 0.2;
/** What stands by itself under its name at this score outweighs what running text says, which then counts half. */
const STATED = 0.8;
const HALF = 0.5;
/** Running text may be about anything, so that it is never certain. */
export const MOST_IN_PROSE = 0.8;

/**
 * Weighs all readings of one field.
 * - Readings with the same value support each other: a second layer (markup beside text) adds to the score.
 * - What the user pointed at comes before anything else.
 * - What only markup says of something that changes does not stand against visible text: it is often older than the page.
 *   Of what lasts (miles, the year), both can't be right.

 * - The best is taken if it stands apart from the next; else the field is left unsettled.
 */
export function settleReadings<Value>(
  readings: readonly ScoredReading<Value>[],
  same: (a: Value, b: Value) => boolean,
  options: { readonly lasting?: boolean } = {},
): DraftField<Value> | undefined {
  const groups: Group<Value>[] = [];
  const isStated = readings.some(({ prose, from, score }) => !prose && from === 'page-text' && score >= STATED);
  for (const given of readings) {
    const reading = isStated && given.prose === true ? { ...given, score: given.score * HALF } : given;
    if (reading.score < LEAST) continue;
    const group = groups.find((one) => same(one.best.value, reading.value));
    if (group === undefined) groups.push(newGroup(reading));
    else join(group, reading);
  }
  const ranked = groups
    .map((group, at) => ({ group, at, score: scoreOf(group, groups, options.lasting ?? false) }))
    .sort((a, b) => b.score - a.score || a.at - b.at);
  const [first, second] = ranked;
  if (first === undefined) return undefined;
  const ahead = first.score - (second?.score ?? 0);
  const settled = second === undefined || ahead >= APART;
  return {
    settled,
    readings: ranked.slice(0, KEPT).map(({ group, score }, at) => {
      const { value, from, text } = group.best;
      const said = from === 'pointed' ? group.best.score : score;
      return { value, from, text, sure: sureOf(said, at === 0 && (second === undefined || ahead >= FAR_APART)) };
    }),
  };
}

interface Group<Value> {
  best: ScoredReading<Value>;
  /** The layers that said so with at least some confidence. */
  readonly layers: Set<ReadFrom>;
}

function newGroup<Value>(reading: ScoredReading<Value>): Group<Value> {
  const group: Group<Value> = { best: reading, layers: new Set() };
  join(group, reading);
  return group;
}

function join<Value>(group: Group<Value>, reading: ScoredReading<Value>): void {
  if (reading.score >= 0.4) group.layers.add(reading.from);
  const pointed = (one: ScoredReading<Value>) => one.from === 'pointed';
  const better = reading.score - group.best.score;
  if (pointed(group.best) && !pointed(reading)) return;
  if (better > 0 || pointed(reading) || (better === 0 && isFuller(reading, group.best))) {
    group.best = { ...reading, score: Math.max(reading.score, group.best.score) };
  }
  // Of markup and visible words that say the same, the visible ones are kept.
  if (group.best.from === 'structured-data' && reading.from === 'page-text' && reading.score >= 0.5) {
    group.best = { ...reading, score: Math.max(reading.score, group.best.score) };
  }
}

/** Of two tellings of the same words, the one that says more. */
function isFuller<Value>(reading: ScoredReading<Value>, than: ScoredReading<Value>): boolean {
  return (
    typeof reading.value === 'string' && typeof than.value === 'string' && reading.value.length > than.value.length
  );
}

function scoreOf<Value>({ best, layers }: Group<Value>, all: readonly Group<Value>[], lasting: boolean): number {
  if (best.from === 'pointed') return 1 + best.score;
  const onlyMarkup = layers.size === 1 && layers.has('structured-data');
  const seen = all.some(
    (other) => other.best.value !== best.value && other.layers.has('page-text') && other.best.score >= LIKELY,
  );
  if (onlyMarkup && seen && !lasting) return Math.min(best.score, LIKELY + APART - 0.01);
  return Math.min(1, best.score + (layers.size > 1 ? SECOND_LAYER : 0));
}

function sureOf(score: number, standsApart: boolean): Sure {
  if (score >= CERTAIN && standsApart) return 'certain';
  return score >= LIKELY ? 'likely' : 'doubtful';
}
