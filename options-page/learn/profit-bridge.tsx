import { type ProfitWalk, WALK_PARTS, type WalkPart } from '../../src/domain/learn/money/profit-walk.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { TermLink } from '../../src/ui/term-link.tsx';
import { PART_TERMS, PART_WORDS } from '../../src/views/learn/learn-words.ts';

interface BridgeProps {
  readonly walk: ProfitWalk;
  readonly from: string;
  readonly to: string;
  /** Whole dollars for an average, cents where each is real. */
  readonly exact?: boolean;
}

/** From expected profit to actual, step by step: what cost is solid, what helped is an outline. */
export function ProfitBridge({ walk, from, to, exact = false }: BridgeProps) {
  const levels = [walk.expected as number];
  for (const part of WALK_PARTS) levels.push((levels.at(-1) ?? 0) + walk.parts[part]);
  const low = Math.min(0, ...levels);
  const span = Math.max(1, Math.max(0, ...levels) - low);
  const place = (a: number, b: number) => ({
    left: `${((Math.min(a, b) - low) / span) * 100}%`,
    width: `${(Math.abs(b - a) / span) * 100}%`,
  });
  const money = (amount: Cents) => formatMoney(amount, exact ? {} : { cents: 'never' });
  const shown = WALK_PARTS.map((part, i) => ({ part, before: levels[i] ?? 0, after: levels[i + 1] ?? 0 })).filter(
    ({ part }) => walk.parts[part] !== 0,
  );
  const zero = { left: `${(-low / span) * 100}%` };
  return (
    <ul class="bridge plain-list">
      <Landing label={from} amount={money(walk.expected)} place={place(0, walk.expected)} zero={zero} />
      {shown.map(({ part, before, after }) => (
        <li key={part} class="bridge-row">
          <span>{partName(part)}</span>
          <span class="bridge-track" aria-hidden="true">
            <span class={after < before ? 'bridge-bar' : 'bridge-bar up'} style={place(before, after)} />
            <span class="bridge-zero" style={zero} />
          </span>
          <span class="number">{signed(walk.parts[part], money)}</span>
        </li>
      ))}
      <Landing label={to} amount={inWords(walk.actual, money)} place={place(0, walk.actual)} zero={zero} last />
    </ul>
  );
}

function partName(part: WalkPart) {
  const term = PART_TERMS[part];
  return term === undefined ? PART_WORDS[part] : <TermLink term={term}>{PART_WORDS[part]}</TermLink>;
}

const signed = (amount: Cents, money: (amount: Cents) => string): string =>
  amount > 0 ? `+${money(amount)}` : `−${money(cents(-amount))}`;

const inWords = (amount: Cents, money: (amount: Cents) => string): string =>
  amount < 0 ? `a loss of ${money(cents(-amount))}` : money(amount);

interface LandingProps {
  readonly label: string;
  readonly amount: string;
  readonly place: { readonly left: string; readonly width: string };
  readonly zero: { readonly left: string };
  readonly last?: boolean;
}

const Landing = ({ label, amount, place, zero, last }: LandingProps) => (
  <li class={last ? 'bridge-row bridge-end bridge-last' : 'bridge-row bridge-end'}>
    <span>{label}</span>
    <span class="bridge-track" aria-hidden="true">
      <span class="bridge-bar" style={place} />
      <span class="bridge-zero" style={zero} />
    </span>
    <span class="number">{amount}</span>
  </li>
);
