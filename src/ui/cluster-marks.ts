export interface Cluster<Mark> {
  readonly marks: readonly Mark[];
  /** Where the cluster stands: the middle of its first and last mark. */
  readonly middle: number;
  /** Whether two neighbours in it are nearer together than anyone can react. */
  readonly collides: boolean;
}

/**
 * Groups marks so that no two groups stand nearer together than `nearest`. Marks keep their order; each is in exactly
 * one group.
 * @param marks in any order, each with its place `at`
 * @param nearest the least distance between two groups, in the unit of `at`
 * @param reaction neighbours nearer than this collide, in the unit of `at`
 */
export function clusterMarks<Mark extends { readonly at: number }>(
  marks: readonly Mark[],
  nearest: number,
  reaction: number,
): Cluster<Mark>[] {
  let groups = [...marks].sort((a, b) => a.at - b.at).map((mark) => [mark]);
  for (;;) {
    const merged: Mark[][] = [];
    for (const group of groups) {
      const last = merged[merged.length - 1];
      if (last !== undefined && middleOf(group) - middleOf(last) < nearest) last.push(...group);
      else merged.push([...group]);
    }
    // Merging moves middles, which can bring two groups too near again.
    if (merged.length === groups.length) return merged.map((group) => describe(group, reaction));
    groups = merged;
  }
}

function middleOf(group: readonly { readonly at: number }[]): number {
  const first = group[0]?.at ?? 0;
  return (first + (group[group.length - 1]?.at ?? first)) / 2;
}

function describe<Mark extends { readonly at: number }>(marks: readonly Mark[], reaction: number): Cluster<Mark> {
  const collides = marks.some((mark, i) => i > 0 && mark.at - (marks[i - 1]?.at ?? 0) < reaction);
  return { marks, middle: middleOf(marks), collides };
}
