/** A rule by which words around a value speak for one thing that it may be. */
export interface RoleRule<Role extends string> {
  readonly role: Role;
  /** Matched against lower-case words on one line. */
  readonly words: RegExp;
  /** How much it speaks for it, 0 to 1: 1 leaves no doubt. */
  readonly weight: number;
}

/** How strongly the words speak for each role; of several rules for one role the strongest counts. */
export type RoleWeights<Role extends string> = ReadonlyMap<Role, number>;

export function weighWords<Role extends string>(text: string, rules: readonly RoleRule<Role>[]): Map<Role, number> {
  const weights = new Map<Role, number>();
  const plain = plainWords(text);
  if (plain === '') return weights;
  for (const { role, words, weight } of rules) {
    if (weight > (weights.get(role) ?? 0) && words.test(plain)) weights.set(role, weight);
  }
  return weights;
}

/** The role that the words speak for most, if one stands out; null when none does. */
export function strongestRole<Role extends string>(
  weights: RoleWeights<Role>,
): { readonly role: Role; readonly weight: number } | null {
  let best: { role: Role; weight: number } | null = null;
  let second = 0;
  for (const [role, weight] of weights) {
    if (best === null || weight > best.weight) {
      second = best?.weight ?? 0;
      best = { role, weight };
    } else second = Math.max(second, weight);
  }
  return best === null || best.weight - second < 0.05 ? null : best;
}

const plainWords = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/[\s_]+/g, ' ')
    .trim();
