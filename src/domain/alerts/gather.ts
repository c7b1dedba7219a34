import { attempt } from '../attempt.ts';
import { MINUTE } from '../time/units.ts';
import { type AlertLot, closesBy } from './alert-lot.ts';
import type { LotCall } from './lot-calls.ts';
import type { DueCall } from './say-lots.ts';

/** What would follow within these minutes is said along with what is due: one notice instead of several. */
export const GATHERED_MINUTES = 15;
/** However many collide, nobody is called more than this earlier for it. */
export const CROWDED_MINUTES = 15;

/** As far ahead as calls have to be known for both. */
export const SEEN_AHEAD_MINUTES = 45;

/** A call that is still ahead, and when it has to be made so that each lot of a crowd can have its bid. */
interface Ahead {
  readonly call: LotCall;
  readonly startAt: number;
}

/** Whether somebody must act on it now: the last call of an open lot whose bid is not as it should be. */
export const isPressing = ({ lot, last }: LotCall, now: number): boolean => last && closesBy(lot) > now && wants(lot);

/** What can't be worked out wants somebody to look. News is said of lots that its user is done with as well. */
function wants(lot: AlertLot): boolean {
  const loud = attempt(() => !lot.ended && lot.bid.loud);
  return !loud.ok || loud.value;
}

/**
 * What is due, with what is gathered into it, and when the next call is.
 * @param ahead what is to come, in any order
 * @param reactionMinutes how long one closing takes up the person who bids: lots that close nearer to each other than
 *   that need their last call so much earlier
 */
export function gather(
  due: readonly DueCall[],
  ahead: readonly LotCall[],
  reactionMinutes: number,
  now: number,
): { readonly due: readonly DueCall[]; readonly next: number } {
  const queue = crowded(ahead, reactionMinutes, now);
  const started = queue.filter(({ startAt }) => startAt <= now);
  const all = [...due];
  const taken = new Set(started.flatMap(({ call }) => (join(all, call) ? [call] : [])));
  const soon = queue.filter(({ startAt }) => startAt > now && startAt <= now + GATHERED_MINUTES * MINUTE);
  const open = all.filter(({ lot }) => closesBy(lot) > now);
  const [pressing, soft] = [open.some((call) => isPressing(call, now)), open.some((call) => !isPressing(call, now))];
  for (const { call } of soon) {
    if (call.step !== 'before' || !wants(call.lot) || !(call.last ? pressing : soft)) continue;
    if (join(all, call)) taken.add(call);
  }
  const next = queue.reduce(
    (soonest, { call, startAt }) =>
      taken.has(call) ? soonest : Math.min(soonest, startAt > now ? startAt : call.dueAt),
    Number.POSITIVE_INFINITY,
  );
  return { due: all, next };
}

/** Adds a call; where its lot is due already, the later of the two calls says both. False when they are of two readings. */
function join(all: DueCall[], call: LotCall): boolean {
  const at = all.findIndex(({ lot }) => lot.id === call.lot.id);
  const other = all[at];
  if (other === undefined) {
    all.push({ ...call, passed: [], told: false });
    return true;
  }
  if (other.close !== call.close) return false;
  if (other.step === 'news') all[at] = { ...other, passed: [...other.passed, call.key], last: other.last || call.last };
  else all[at] = { ...call, passed: [other.key, ...other.passed], told: other.told };
  return true;
}

/** The last call of a lot comes so early that those which follow close upon it can have their bids as well. */
function crowded(ahead: readonly LotCall[], reactionMinutes: number, now: number): Ahead[] {
  const sorted = ahead.toSorted((a, b) => a.dueAt - b.dueAt);
  const horizon = now + SEEN_AHEAD_MINUTES * MINUTE;
  let following = Number.POSITIVE_INFINITY;
  return sorted
    .toReversed()
    .map((call) => {
      // What is far off hangs on bids that need not be worked out yet.
      if (!call.last || call.dueAt > horizon || !wants(call.lot)) return { call, startAt: call.dueAt };
      const early = Math.min(call.dueAt, following - reactionMinutes * MINUTE);
      const startAt = Math.max(early, call.dueAt - CROWDED_MINUTES * MINUTE);
      following = startAt;
      return { call, startAt };
    })
    .toReversed();
}
