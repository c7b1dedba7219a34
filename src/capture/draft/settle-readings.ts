import type { DraftField, ReadFrom, Reading, Sure } from './draft-lot.ts';

const RANK: Readonly<Record<Sure, number>> = { doubtful: 0, likely: 1, certain: 2 };
const KEPT = 6;

/**
 * Weighs all readings of one field.
 * - Readings with the same value support each other: two layers that agree make a likely value certain.
 * - What the user pointed at comes before anything else.
 * - What only markup says does not stand against visible text that differs: it is often older than the page.
 * - A clearly better supported value is taken, and the rest listed behind it; if the rest was likely too, it is no longer
 *   certain. Equally good values that differ leave the field unsettled.
 */
export function settleReadings<Value>(
  readings: readonly Reading<Value>[],
  same: (a: Value, b: Value) => boolean,
): DraftField<Value> | undefined {
  const groups: Group<Value>[] = [];
  for (const reading of readings) {
    const group = groups.find((one) => same(one.best.value, reading.value));
    if (group === undefined) groups.push(newGroup(reading));
    else join(group, reading);
  }
  const ranked = groups
    .map((group, at) => ({ group, at, rank: rankOf(group) }))
    .sort((a, b) => b.rank - a.rank || a.at - b.at);
  const [first, second] = ranked;
  if (first === undefined) return undefined;
  const contradicted =
    isOnlyMarkup(first.group) && ranked.some(({ group, rank }) => isSeen(group) && rank >= RANK.likely);
  const settled = second === undefined || (first.rank > second.rank && !contradicted);
  const shaken = settled && second !== undefined && second.rank >= RANK.likely && first.rank <= RANK.certain;
  return {
    settled,
    readings: ranked.slice(0, KEPT).map(({ group }, at) => {
      const sure = sureOf(group);
      return { ...group.best, sure: at === 0 && shaken && sure === 'certain' ? 'likely' : sure };
    }),
  };
}

interface Group<Value> {
  best: Reading<Value>;
  /** The layers that said so with at least some confidence. */
  readonly layers: Set<ReadFrom>;
  pointed: boolean;
}

function newGroup<Value>(reading: Reading<Value>): Group<Value> {
  const group: Group<Value> = { best: reading, layers: new Set(), pointed: false };
  join(group, reading);
  return group;
}

function join<Value>(group: Group<Value>, reading: Reading<Value>): void {
  if (reading.sure !== 'doubtful') group.layers.add(reading.from);
  if (reading.from === 'pointed') group.pointed = true;
  const better = RANK[reading.sure] - RANK[group.best.sure];
  const first = reading.from === 'pointed' && group.best.from !== 'pointed';
  if (better > 0 || first || (better === 0 && group.best.from !== 'pointed' && isFuller(reading, group.best))) {
    group.best = reading;
  }
}

const isOnlyMarkup = <Value>({ layers }: Group<Value>): boolean => layers.size === 1 && layers.has('structured-data');
const isSeen = <Value>({ layers }: Group<Value>): boolean => layers.has('page-text');

/** Of two tellings of the same words, the one that says more. */
function isFuller<Value>(reading: Reading<Value>, than: Reading<Value>): boolean {
  return (
    typeof reading.value === 'string' && typeof than.value === 'string' && reading.value.length > than.value.length
  );
}

function sureOf<Value>(group: Group<Value>): Sure {
  return group.layers.size > 1 ? 'certain' : group.best.sure;
}

function rankOf<Value>(group: Group<Value>): number {
  return group.pointed ? RANK.certain + 1 : RANK[sureOf(group)];
}
