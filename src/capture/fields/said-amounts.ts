import type { DecimalMark } from '../../domain/money/written-number.ts';
import type { PageNode } from '../dom/page-tree.ts';
import type { ReadFrom } from '../draft/draft-lot.ts';
import { meaningOf } from '../roles/label-list.ts';
import { isRemark, isTalk, labelRoles } from '../roles/label-roles.ts';
import { MONEY_AFTER, MONEY_LABELS, type MoneyRole } from '../roles/money-roles.ts';
import { type RoleWeights, strongestRole, weighWords } from '../roles/role-words.ts';
import { clauseBefore } from '../text/clause.ts';
import { isOnButton } from '../text/on-button.ts';
import { type Pair, pairText } from '../text/pair.ts';
import { bareAmountsIn, hasMaskedMoney, type MoneyToken, moneyIn } from '../tokens/money-tokens.ts';
import type { LotSource } from './field-reader.ts';

/** An amount of a lot and what the words around it say that it is. */
export interface SaidAmount {
  readonly token: MoneyToken;
  /** Null where nothing names it. */
  readonly role: MoneyRole | null;
  /** How much speaks for the role, 0 to 1. */
  readonly weight: number;
  readonly text: string;
  readonly node: PageNode | null;
  readonly from: ReadFrom;
  readonly prose: boolean;
  readonly button: boolean;
}

/** How well each place of a label tells what its value is. */
const HOW: Readonly<Record<Pair['how'], number>> = {
  cell: 1,
  head: 1,
  attribute: 1,
  caption: 0.97,
  colon: 1,
  'run-on': 0.93,
  data: 0.8,
};
const PROSE = 0.9;
const BARE = 0.92;

/** Every amount that is said of a lot, labeled or in running text. */
export function amountsSaid({ pairs, looseLines, decimal }: LotSource): readonly SaidAmount[] {
  const said: SaidAmount[] = [];
  for (const pair of pairs) said.push(...inPair(pair, decimal));
  for (const line of looseLines) {
    if (line.text.length > 2000 || !/\d/.test(line.text)) continue;
    const tokens = moneyIn(line.text, decimal);
    if (tokens.length > 40) continue;
    said.push(
      ...rolesAround(line.text, tokens, new Map(), 1).map((one) => ({
        ...one,
        text: aroundOf(line.text, one.token),
        node: line.element,
        from: 'page-text' as const,
        prose: line.prose,
        button: isOnButton(line.element),
      })),
    );
  }
  return said;
}

function inPair(pair: Pair, decimal: DecimalMark | undefined): readonly SaidAmount[] {
  const roles = labelRoles(pair.label).money;
  const named = strongestRole(roles);
  const currency = currencyIn(pair.after) || currencyIn(/\(([^()]*)\)/.exec(pair.label)?.[1] ?? '');
  const value = `${pair.value.split('\n', 2).join(' ')} ${currency}`.trim().slice(0, 300);
  const isTold = isTalk(pair.label, pair.value) || (pair.how === 'head' && isRemark(pair.label));
  if (hasMaskedMoney(value) || isTold) return [];
  const signed = moneyIn(value, decimal);
  const isFact = [...labelRoles(pair.label).fact.values()].some((weight) => weight > 0.9);
  const bare = signed.length === 0 && named !== null && !isFact ? bareAmountsIn(value, decimal).slice(0, 1) : [];
  // A bare figure must be all there is, or nearly so.
  const tokens =
    signed.length > 0
      ? signed
      : bare.filter((token) => token.start === 0 && !/^\s*(?:mi|km|miles|bids?|%)\b/i.test(value.slice(token.end)));
  const how = HOW[pair.how] * (pair.prose ? PROSE : 1);
  return rolesAround(value, tokens, roles, how).map((one) => ({
    ...one,
    weight: one.weight * (one.token.signed ? 1 : BARE),
    text: pairText(pair),
    node: pair.node,
    from: pair.from,
    prose: pair.prose,
    button: isOnButton(pair.node),
  }));
}

const currencyIn = (after: string): string =>
  /^(?:USD|US ?\$|CAD|C\$|CA ?\$|\$ ?CA\b|\$|MXN|EUR|€|£)(?![\p{L}])/iu.exec(after)?.[0].replace(/^\$ ?CA$/i, 'CAD') ??
  '';

/** The role of each amount in a text: the words right before it, else those after it, else the label of the whole. */
function rolesAround(
  text: string,
  tokens: readonly MoneyToken[],
  label: RoleWeights<MoneyRole>,
  how: number,
): readonly Pick<SaidAmount, 'token' | 'role' | 'weight'>[] {
  return tokens.map((token, at) => {
    const from = tokens[at - 1]?.end ?? 0;
    const until = tokens[at + 1]?.start ?? text.length;
    const before = clauseBefore(text.slice(from, token.start));
    const after = text
      .slice(token.end, until)
      .replace(/^[\s,]+/, '')
      .slice(0, 40);
    const words = weighWords(before, MONEY_LABELS);
    // "The buy fee at the current bid": what the words before say of something else, the last of them can't unsay.
    const named = words.has('other') ? NO_ROLES : labelAtEnd(before);
    const left = named.size > 0 ? named : words;
    const right = weighWords(after, MONEY_AFTER);
    // The label names the first amount behind it; the others stand for themselves.
    const roles = left.size > 0 ? left : at === 0 ? label : new Map<MoneyRole, number>();
    const all = new Map(roles);
    // Words between two amounts belong to the second, where the first has some of its own.
    const next = tokens[at + 1] !== undefined && roles.size > 0;
    for (const [role, weight] of next ? [] : right) all.set(role, Math.max(weight, all.get(role) ?? 0));
    if (all.has('other') && (all.get('other') ?? 0) >= 0.95 && left.has('other'))
      return { token, role: 'other', weight: 1 };
    const best = strongestRole(all);
    return { token, role: best?.role ?? null, weight: (best?.weight ?? 0) * how };
  });
}

const NO_ROLES: RoleWeights<MoneyRole> = new Map();

/** The known label of several words that a text ends in: `… 11:50 AM ET TO STAY IN`. */
function labelAtEnd(before: string): RoleWeights<MoneyRole> {
  const words = before.split(' ');
  for (let count = Math.min(5, words.length); count >= 2; count--) {
    const label = words.slice(-count).join(' ');
    if (meaningOf(label) !== undefined) return labelRoles(label).money;
  }
  return NO_ROLES;
}

const aroundOf = (text: string, { start, end }: MoneyToken): string =>
  text.slice(Math.max(0, start - 60), end + 60).trim();
