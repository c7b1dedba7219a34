import type { PageNode } from '../dom/page-tree.ts';
import type { ReadFrom } from '../draft/draft-lot.ts';
import { isTalk, labelRoles } from '../roles/label-roles.ts';
import { type RoleWeights, strongestRole, weighWords } from '../roles/role-words.ts';
import { TIME_AFTER, TIME_LABELS, type TimeRole } from '../roles/time-roles.ts';
import { clauseBefore } from '../text/clause.ts';
import { type Pair, pairText } from '../text/pair.ts';
import { countdownsIn } from '../tokens/countdown-tokens.ts';
import type { DateToken } from '../tokens/date-tokens.ts';
import { type MomentToken, momentsIn } from '../tokens/moment-tokens.ts';
import { zonesIn } from '../tokens/zone-tokens.ts';
import type { LotSource } from './field-reader.ts';

/** A moment that the page says, and what the words around it say that it is. */
export interface SaidMoment {
  readonly token: MomentToken;
  readonly role: TimeRole | null;
  readonly weight: number;
  /** A day that stands in the same text beside another time. */
  readonly day: DateToken | null;
  /** Zone words that stand in the label: `Ends (ET)`. */
  readonly labelZone: string;
  readonly text: string;
  readonly node: PageNode | null;
  readonly from: ReadFrom;
  readonly prose: boolean;
}

/** Moments but for what looks like one within a time that is left: the `6h` of `6h 12m`. */
function momentsApart(text: string, language: string): readonly MomentToken[] {
  const left = countdownsIn(text).filter((token) => token.text.includes(' '));
  return momentsIn(text, language).filter(
    (token) => token.iso !== '' || !left.some((one) => token.start < one.end && one.start < token.end),
  );
}

/** Every moment that is said of a lot, labeled or in running text. */
export function momentsSaid({ pairs, looseLines, clock }: LotSource): readonly SaidMoment[] {
  const said = pairs.flatMap((pair) => inPair(pair, clock.language));
  for (const line of looseLines) {
    if (line.text.length > 2000) continue;
    const tokens = momentsApart(line.text, clock.language);
    said.push(
      ...rolesAround(line.text, tokens, new Map()).map((one) => ({
        ...one,
        labelZone: '',
        text: aroundOf(line.text, one.token),
        node: line.element,
        from: 'page-text' as const,
        prose: line.prose,
      })),
    );
  }
  return said;
}

function inPair(pair: Pair, language: string): readonly SaidMoment[] {
  const roles = labelRoles(pair.label).time;
  const value = `${pair.value.split('\n').slice(0, 6).join(' ')} ${pair.after}`.slice(0, 300);
  // A clock that shows nothing but zeros is not set yet, or has run out.
  if (/^[\s0:.dhms]*$/i.test(value) || isTalk(pair.label, pair.value)) return [];
  const tokens = momentsApart(value, language);
  if (tokens.length === 0) return [];
  // A page that names an amount or a car beside the label did not mean a time by it.
  const labelZone = zonesIn(pair.label)[0]?.zone ?? '';
  return rolesAround(value, tokens, roles).map((one) => ({
    ...one,
    weight: one.weight * (pair.how === 'caption' ? 0.97 : 1),
    labelZone,
    text: pairText(pair),
    node: pair.node,
    from: pair.from,
    prose: pair.prose,
  }));
}

function rolesAround(
  text: string,
  tokens: readonly MomentToken[],
  label: RoleWeights<TimeRole>,
): readonly Pick<SaidMoment, 'token' | 'role' | 'weight' | 'day'>[] {
  const roles = tokens.map((token, at) => {
    const from = tokens[at - 1]?.end ?? 0;
    const until = tokens[at + 1]?.start ?? text.length;
    const before = clauseBefore(text.slice(from, token.start));
    const after = text
      .slice(token.end, until)
      .replace(/^[\s,.)]+/, '')
      .slice(0, 30);
    const left = weighWords(before, TIME_LABELS);
    const right = weighWords(after, TIME_AFTER);
    const all = new Map<TimeRole, number>(left.size > 0 ? left : at === 0 ? label : []);
    const joined = at > 0 && left.size === 0 && JOINED.test(before);
    for (const [role, weight] of right) all.set(role, Math.max(weight, all.get(role) ?? 0));
    const best = strongestRole(all);
    return { token, role: best?.role ?? null, weight: best?.weight ?? 0, joined };
  });
  return roles.map(({ token, role, weight, joined }, at) => {
    // The same moment told a second way, as in another zone.
    const before = joined ? roles[at - 1] : undefined;
    const said = role === null && before !== undefined ? before : { role, weight };
    const day =
      roles.find((other) => other.token !== token && other.token.date !== null && other.role !== 'other')?.token.date ??
      null;
    return { token, role: said.role, weight: said.weight, day };
  });
}

const JOINED = /^(?:\/|\(|=)?$/;

const aroundOf = (text: string, { start, end }: MomentToken): string =>
  text.slice(Math.max(0, start - 50), end + 30).trim();
