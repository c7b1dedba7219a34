import { type AlertLot, closesBy } from './alert-lot.ts';

/** The team around this computer, as far as its calls go. Only known while this computer is in step with it. */
export interface TeamWatch {
  /** Who uses this computer. */
  readonly me: string;
  readonly myRole: string;
  /** The others who are in the team. */
  readonly others: readonly Watcher[];
}

export interface Watcher {
  readonly name: string;
  /** `manager`, `buyer` and others; one of a newer program as it is. */
  readonly role: string;
}

/** Who is on duty by the plan of busy hours; `busy` without `who` where the plan names nobody. */
export interface OnDuty {
  readonly busy: boolean;
  readonly who?: string | undefined;
}

/**
 * Whether a call is another's and not made here. Called first is who was handed the lot; else who is on duty; where the plan
 * names nobody, the managers in busy hours and the buyers in all others. If nobody has said “I have it” by the last call,
 * everybody is called. Where none of those who would be called first is in the team, everybody is called from the start.
 */
export function isCalledElsewhere(
  { lot, last }: { readonly lot: AlertLot; readonly last: boolean },
  team: TeamWatch | undefined,
  duty: OnDuty,
  now: number,
): boolean {
  if (team === undefined || lot.mine === true) return false;
  const isOthers = lot.handedTo !== undefined && team.others.some(({ name }) => isSamePerson(name, lot.handedTo));
  if (isOthers && lot.taken === true) return true;
  // How it ended is asked of whoever had it.
  if (closesBy(lot) <= now) return isOthers;
  return !last && !isCalledFirst(lot.handedTo, team, duty);
}

/** Whether who uses this computer is among those who are called first. */
function isCalledFirst(handedTo: string | undefined, team: TeamWatch, duty: OnDuty): boolean {
  const me: Watcher = { name: team.me, role: team.myRole };
  const all = [me, ...team.others];
  const named = (names: string) => {
    const whole = all.filter(({ name }) => isSamePerson(name, names));
    // The plan joins the names of two who are there at once; a name may hold an “and” itself.
    if (whole.length > 0) return whole;
    const each = names.split(/\s+and\s+/i);
    return all.filter(({ name }) => each.some((one) => isSamePerson(one, name)));
  };
  const ofRole = (role: string) => all.filter((one) => one.role === role);
  const first =
    handedTo !== undefined
      ? named(handedTo)
      : (duty.who ?? '').trim() !== ''
        ? named(duty.who ?? '')
        : ofRole(duty.busy ? 'manager' : 'buyer');
  return first.length === 0 || first.includes(me);
}

/** People type their names in more than one way. */
export const isSamePerson = (one: string, other: string | undefined): boolean =>
  other !== undefined && one.trim().toLowerCase() === other.trim().toLowerCase();
