import type { DisputeRecord } from '../dispute/dispute.ts';
import { stillNeeded } from '../dispute/dispute.ts';
import { type Cents, ZERO } from '../money/cents.ts';
import { WIN_STEPS, type WinStep } from '../setup/after-sale-rules.ts';
import type { Setup } from '../setup/setup.ts';
import { disputeDues } from './dispute-due.ts';
import { type Due, dueAt, dueBy } from './due.ts';
import { stepRule, type VenuePlace } from './venue-place.ts';
import { eventsOf, type SoldLot, winStands } from './win.ts';
import { type WinMoney, winMoney } from './win-money.ts';
import { claimWindows } from './win-standing.ts';
import { doneAt } from './win-step.ts';

/** One thing that is left to do about a lot, and until when. */
export interface ToDo {
  /** Stable among the things to do about one lot. */
  readonly key: string;
  readonly kind: 'step' | 'refund' | 'look-over' | 'dispute' | 'bills';
  /** What is to be done, short: "Pay", "Answer the claim". */
  readonly what: string;
  readonly due: Due;
  /** The step that is done with a tap. */
  readonly step?: WinStep | 'refund';
  /** Money that goes with it. */
  readonly cents?: Cents;
  /** Position of the dispute among those of the lot. */
  readonly dispute?: number;
  /** Papers and pictures of a dispute that are still to be got. */
  readonly needs?: readonly string[];
}

export const STEP_TO_DO: Readonly<Record<WinStep, string>> = {
  pay: 'Pay',
  transport: 'Arrange transport',
  deliver: 'Get it delivered',
  inspect: 'Inspect it',
  title: 'Get the title',
  fund: 'Floor-plan it or fund it',
};

/**
 * Everything that is left to do about a lot after its sale: the open steps of a win that stands, money that is to come
 * back, the end of the time in which a defect can be brought up while the car was not inspected, and open disputes.
 */
export function toDosOf(lot: SoldLot, setup: Pick<Setup, 'feeSchedules'>, place: VenuePlace): readonly ToDo[] {
  const money = winMoney(lot, setup, place);
  return [...stepsToDo(lot, money, place), ...moneyToDo(lot, money), ...disputesToDo(lot, place)];
}

function stepsToDo(lot: SoldLot, money: WinMoney | undefined, place: VenuePlace): ToDo[] {
  if (!winStands(lot)) return [];
  const events = eventsOf(lot);
  const { toPay = ZERO } = money ?? {};
  const open = WIN_STEPS.filter((step) =>
    step === 'pay' ? toPay > 0 || doneAt(lot.steps, 'pay') === undefined : doneAt(lot.steps, step) === undefined,
  );
  const steps = open.map(
    (step): ToDo => ({
      key: step,
      kind: 'step',
      what: STEP_TO_DO[step],
      due: dueBy(stepRule(place, step), events, place),
      step,
      ...(step === 'pay' && { cents: toPay }),
    }),
  );
  return open.includes('inspect') ? [...steps, ...lookOver(lot, place)] : steps;
}

/** The soonest end of the windows for what is seen on the car itself. */
function lookOver(lot: SoldLot, place: VenuePlace): ToDo[] {
  const ends = claimWindows(lot, place)
    .filter(({ reason, due }) => (reason === 'hidden-defect' || reason === 'wrong-description') && due.as === 'at')
    .sort((a, b) => (dueAt(a.due) ?? 0) - (dueAt(b.due) ?? 0));
  const [first] = ends;
  if (first === undefined) return [];
  return [
    { key: 'look-over', kind: 'look-over', what: 'Deadline to report a defect', due: first.due, step: 'inspect' },
  ];
}

function moneyToDo(lot: SoldLot, money: WinMoney | undefined): ToDo[] {
  if (money === undefined) return [];
  const { toPay, toComeBack, others } = money;
  const due: Due = { as: 'no-rule' };
  const list: ToDo[] = [];
  // What an undone sale leaves to pay is no step of a win any more.
  if (toPay > 0 && !winStands(lot))
    list.push({ key: 'pay', kind: 'step', what: 'Pay the rest from the dispute', due, step: 'pay', cents: toPay });
  if (toComeBack > 0)
    list.push({ key: 'refund', kind: 'refund', what: 'Get the refund', due, step: 'refund', cents: toComeBack });
  if (others > 0) list.push({ key: 'bills', kind: 'bills', what: 'Pay the other bills', due, cents: others });
  return list;
}

function disputesToDo(lot: SoldLot, place: VenuePlace): ToDo[] {
  const events = eventsOf(lot);
  return lot.disputes.flatMap((dispute: DisputeRecord, position) => {
    if (dispute.outcome !== undefined) return [];
    const needs = stillNeeded(dispute);
    const about = { kind: 'dispute' as const, dispute: position, needs };
    const dues = disputeDues(dispute, events, place);
    if (dues.length === 0)
      return [
        { ...about, key: `dispute-${position}-wait`, what: 'Settle the dispute', due: { as: 'no-rule' as const } },
      ];
    return dues.map(({ kind, what, due }) => ({ ...about, key: `dispute-${position}-${kind}`, what, due }));
  });
}

/** By when, the soonest first; what has no date comes last. */
export const bySoonest = (a: { readonly due: Due }, b: { readonly due: Due }): number =>
  (dueAt(a.due) ?? Number.MAX_SAFE_INTEGER) - (dueAt(b.due) ?? Number.MAX_SAFE_INTEGER);
