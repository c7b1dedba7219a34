import type { Instant } from '../time/instant.ts';
import { MINUTE } from '../time/units.ts';

/** Closings that follow each other faster than one person can act; in the order of their closes, at least two. */
export interface Collision<Closing extends { readonly close: Instant }> {
  readonly closings: readonly Closing[];
  readonly first: Instant;
  readonly last: Instant;
}

/**
 * Groups of closings of which each comes within the reaction time of the one before it.
 * @param reactionMinutes how long one closing takes up the person who bids
 */
export function collisionsOf<Closing extends { readonly close: Instant }>(
  closings: readonly Closing[],
  reactionMinutes: number,
): readonly Collision<Closing>[] {
  return closeTogether(closings, reactionMinutes).flatMap((group) => {
    const [first, last] = [group[0], group.at(-1)];
    if (first === undefined || last === undefined || group.length < 2) return [];
    return [{ closings: group, first: first.close, last: last.close }];
  });
}

/** Every closing, in groups as above; one that stands alone is a group of its own. */
export function closeTogether<Closing extends { readonly close: Instant }>(
  closings: readonly Closing[],
  reactionMinutes: number,
): readonly (readonly Closing[])[] {
  const groups: Closing[][] = [];
  let before: Closing | undefined;
  for (const closing of closings.toSorted((a, b) => a.close - b.close)) {
    const joins = before !== undefined && closing.close - before.close <= reactionMinutes * MINUTE;
    if (joins) groups.at(-1)?.push(closing);
    else groups.push([closing]);
    before = closing;
  }
  return groups;
}
