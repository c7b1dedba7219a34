import { closeTogether } from '../../domain/rush/collisions.ts';
import type { RushBand } from '../../domain/rush/rush-bands.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { type Closing, isOpen } from './closing.ts';

/** A line across the list at a moment: the rush begins or ends, or it is now. */
export interface Edge {
  readonly at: Instant;
  readonly words: string;
  readonly kind: 'rush' | 'now';
}

export type DayItem =
  | { readonly kind: 'closing'; readonly closing: Closing }
  | { readonly kind: 'edge'; readonly edge: Edge };

/** Closings that one bracket holds together, with the lines that fall between them; or such lines alone. */
export interface DayGroup {
  readonly key: string;
  readonly items: readonly DayItem[];
  readonly closings: number;
  /** How many of them collide and are still open; none, or at least two. */
  readonly colliding: number;
}

/**
 * A day as a list from top to bottom. A line at a close stands above it: a rush that begins then is already there.
 * @param closings in the order of their times
 */
export function dayGroups(
  closings: readonly Closing[],
  edges: readonly Edge[],
  reactionMinutes: number,
): readonly DayGroup[] {
  const ahead = edges.toSorted((a, b) => a.at - b.at);
  const groups: DayGroup[] = [];
  const edgesUntil = (at: number): DayItem[] => {
    const until = ahead.findIndex((edge) => edge.at > at);
    return ahead.splice(0, until === -1 ? ahead.length : until).map((edge) => ({ kind: 'edge', edge }));
  };
  const alone = (items: readonly DayItem[]) => {
    const [first] = items;
    if (first?.kind === 'edge')
      groups.push({ key: `edge ${first.edge.kind} ${first.edge.at}`, items, closings: 0, colliding: 0 });
  };
  for (const { closings: together, colliding } of openTogether(closings, reactionMinutes)) {
    const items: DayItem[] = [];
    for (const closing of together) {
      const before = edgesUntil(closing.close);
      if (items.length === 0) alone(before);
      else items.push(...before);
      items.push({ kind: 'closing', closing });
    }
    groups.push({ key: together[0]?.id ?? '', items, closings: together.length, colliding });
  }
  alone(edgesUntil(Number.POSITIVE_INFINITY));
  return groups;
}

/**
 * All closings in the order of their times, those that collide while they are still open together, with what has closed
 * in between; everything else alone.
 * @param closings in the order of their times
 */
function openTogether(closings: readonly Closing[], reactionMinutes: number) {
  const groupOf = new Map<Closing, readonly Closing[]>();
  for (const group of closeTogether(closings.filter(isOpen), reactionMinutes))
    for (const closing of group) groupOf.set(closing, group);
  const together: { readonly closings: Closing[]; readonly colliding: number }[] = [];
  let last: Closing | undefined;
  for (const closing of closings) {
    if (last !== undefined) together.at(-1)?.closings.push(closing);
    else {
      const group = groupOf.get(closing) ?? [closing];
      together.push({ closings: [closing], colliding: group.length > 1 ? group.length : 0 });
      last = group.at(-1);
    }
    if (closing === last) last = undefined;
  }
  return together;
}

/** Where the busy hours of a day begin and end, in words. */
export function rushEdges(bands: readonly RushBand[], clock: (at: Instant) => string): readonly Edge[] {
  return bands.flatMap(({ from, to, note }) => [
    {
      at: from,
      kind: 'rush' as const,
      words: `${note === '' ? 'Busy hours begin' : `${note} begins`}, ${clock(from)}`,
    },
    { at: to, kind: 'rush' as const, words: `${note === '' ? 'Busy hours end' : `${note} ends`}, ${clock(to)}` },
  ]);
}
