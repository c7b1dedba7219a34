import type { CostKind } from '../../accounts/cost-kind.ts';
import { COST_KINDS } from '../../accounts/cost-kind.ts';
import { groupBy } from '../../group-by.ts';
import { type Cents, cents, sumCents } from '../../money/cents.ts';
import { plainWords } from '../../text/plain-words.ts';
import { differenceInWords } from './difference-words.ts';
import type { ExpectedLine } from './expected.ts';

/** One booked line, as far as a comparison needs it. */
export interface ActualLine {
  readonly key: string;
  readonly cost: CostKind;
  readonly label: string;
  readonly cents: Cents;
  readonly against?: string | undefined;
  /** Agreed in this dispute. */
  readonly dispute?: string | undefined;
}

/** Expected beside actual, and why they differ. */
export interface ComparedLine {
  readonly key: string;
  readonly cost: CostKind;
  readonly label: string;
  readonly expected: ExpectedLine | null;
  /** Every bill that answers it; credits are below zero. */
  readonly actual: readonly ActualLine[];
  /** Their sum; null when no bill came yet. */
  readonly actualCents: Cents | null;
  /** Actual less expected; null while there is no bill. */
  readonly difference: Cents | null;
  readonly why: string;
  /** Whether somebody should check: the amount differs from the fee schedule or the result, or nobody expected the bill. */
  readonly look: boolean;
}

/** Puts the bills of a car beside what was expected, in the order of a purchase: price, fees, freight, recon, money. */
export function compareLines(expected: readonly ExpectedLine[], actual: readonly ActualLine[]): ComparedLine[] {
  const answers = groupBy(actual, (line) => answeredBy(line, expected));
  const others = answers.get(undefined) ?? [];
  const rows = [
    ...expected.map((line) => compared(line.key, line, answers.get(line.key) ?? [])),
    ...byLabel(others).map((lines) => compared(lines[0]?.key ?? '', null, lines)),
  ];
  return rows.sort((a, b) => COST_KINDS.indexOf(a.cost) - COST_KINDS.indexOf(b.cost));
}

/** The expected line that a bill's line answers: the one it names, else the one worded alike, else the only one of its kind. */
export function answeredBy(
  { cost, label, against }: Pick<ActualLine, 'cost' | 'label' | 'against'>,
  expected: readonly ExpectedLine[],
): string | undefined {
  const ofKind = expected.filter((line) => line.cost === cost);
  if (against !== undefined && ofKind.some(({ key }) => key === against)) return against;
  const words = plainWords(label);
  const alike =
    ofKind.find((line) => plainWords(line.label) === words) ?? ofKind.find((line) => sharesWords(line.label, words));
  if (alike !== undefined) return alike.key;
  return ofKind.length === 1 && (cost === 'hammer' || cost === 'transport' || cost === 'interest')
    ? ofKind[0]?.key
    : undefined;
}

/** Whether all words of one stand in the other: "Online fee" and "Online fee, standard". */
function sharesWords(label: string, words: string): boolean {
  const ours = plainWords(label);
  return (
    ours.length > 2 && words.length > 2 && (` ${words} `.includes(` ${ours} `) || ` ${ours} `.includes(` ${words} `))
  );
}

function byLabel(lines: readonly ActualLine[]): ActualLine[][] {
  return [...groupBy(lines, ({ cost, label }) => `${cost}/${plainWords(label)}`).values()];
}

function compared(key: string, expected: ExpectedLine | null, actual: readonly ActualLine[]): ComparedLine {
  const [first] = actual;
  const cost = expected?.cost ?? first?.cost ?? 'other';
  const actualCents = actual.length === 0 ? null : sumCents(actual.map((line) => line.cents));
  const difference = actualCents === null ? null : cents(actualCents - (expected?.cents ?? 0));
  const exact = cost === 'hammer' || cost === 'fee';
  const agreed = actual.length > 0 && actual.every(({ dispute }) => dispute !== undefined);
  return {
    key,
    cost,
    label: expected?.label ?? first?.label ?? '',
    expected,
    actual,
    actualCents,
    difference,
    why: agreed ? 'Agreed in a dispute.' : differenceInWords(cost, expected, actualCents),
    look: !agreed && difference !== null && difference !== 0 && (exact || expected === null),
  };
}
