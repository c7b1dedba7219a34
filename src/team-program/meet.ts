import type { Refusal } from '../domain/outcome.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { MINUTE, SECOND } from '../domain/time/units.ts';
import type { KeptTeam, TeamProgress } from '../store/connection/kept-team.ts';
import type { TeamStore } from '../store/team/team-store.ts';
import { fetchNew } from '../team/incoming/fetch.ts';
import type { Position } from '../team/incoming/fetching.ts';
import type { Membership } from '../team/incoming/membership.ts';
import { subjectOf } from '../team/message/subjects.ts';
import { send } from '../team/outgoing/send.ts';
import { membershipOf } from '../team/roster/open-roster.ts';
import type { TeamState } from '../team/roster/team-state.ts';
import type { Wire } from '../team/wire/wire.ts';
import { meetRoster } from './meet-roster.ts';

/** How often the server is asked what it has of this device although nothing seems to be left to send. */
const ASK_AGAIN = MINUTE;
/** How long "in step" may stand before it is renewed; the words show minutes. */
const RENEW = 30 * SECOND;
/** Sentences of what was left out that are kept for the screen. */
const MOST_TOLD = 20;

export interface Meeting {
  readonly store: TeamStore;
  readonly wire: Wire;
  readonly team: KeptTeam;
  readonly now: () => Instant;
  /** Told when something came in. */
  readonly onNews?: () => void;
}

/**
 * Fetches what the server has and sends what it lacks, once, and notes how far that came. Nothing is lost wherever it is cut
 * off: the next meeting goes on from there.
 * @returns why it stopped; null when everything was sent and fetched
 */
export async function meetTeam(meeting: Meeting, known: TeamState): Promise<Refusal | null> {
  const { store, wire, now, team } = meeting;
  const before = await store.progress();
  const last = await wire.last();
  if (!last.ok) return note(meeting, before, { stopped: last });
  const isDue = before.inStepAt === null || now() - before.inStepAt > ASK_AGAIN || now() < before.inStepAt;
  const hasNews = last.value !== before.seen || before.waiting.length > 0;
  const hasOwn = (await store.ownEnd()) > before.sent;
  if (!isDue && !hasNews && !hasOwn && before.stopped === null) return note(meeting, before, {});
  let progress: TeamProgress = { ...before, last: last.value };
  let state = known;
  if (hasNews || isDue || before.stopped !== null) {
    const roster = await meetRoster({ store, wire, team }, known);
    if (!roster.ok) return note(meeting, progress, { stopped: roster });
    state = roster.value.state;
    if (roster.value.isOut) return note(meeting, progress, { stopped: PUT_OUT });
    progress = { ...progress, told: added(progress.told, roster.value.told) };
    const fetched = await fetch(meeting, membershipOf(roster.value.open), progress);
    progress = fetched.progress;
    if (fetched.stopped !== null) return note(meeting, progress, { stopped: fetched.stopped });
    progress = { ...progress, seen: last.value };
  }
  const { keys, credentials } = state;
  const { sent, stopped } = await send({ chain: store, wire, team: state.team, keys, seed: credentials.seed });
  if (stopped !== null) return note(meeting, progress, { stopped, sent: Math.max(sent.sequence, progress.sent) });
  const ahead = hasOwn ? await aheadOf(meeting, subjectOf(state.team, state.device)) : null;
  return note(meeting, progress, { sent: sent.sequence, ...(ahead !== null && { ahead }) });
}

export const PUT_OUT: Refusal = {
  reason: 'put-out',
  message: 'This computer was put out of the team. What is here stays here; nothing is sent or fetched any more.',
};

async function fetch(
  { store, wire, onNews }: Meeting,
  membership: Membership,
  before: TeamProgress,
): Promise<{ readonly progress: TeamProgress; readonly stopped: Refusal | null }> {
  const asProgress = ({ place, hash, waiting }: Position) => ({ ...before, place, hash, waiting: [...waiting] });
  const result = await fetchNew(
    {
      journal: store,
      wire,
      membership,
      reached: async (position) => {
        await store.noteProgress(asProgress(position));
      },
    },
    { place: before.place, hash: before.hash, waiting: new Map(before.waiting) },
  );
  if (result.added > 0) onNews?.();
  return {
    progress: { ...asProgress(result.position), told: added(before.told, result.told) },
    stopped: result.stopped,
  };
}

/** What waits is told at every meeting; once is enough. */
const added = (before: readonly string[], told: readonly string[]): readonly string[] =>
  [...new Set([...before, ...told])].slice(-MOST_TOLD);

/** How far this clock is ahead of the server's, by the message that was stored just now. */
async function aheadOf({ wire, now }: Meeting, subject: string): Promise<number | null> {
  const last = await wire.lastOn(subject);
  return last.ok && last.value !== null ? now() - last.value.at : null;
}

async function note(
  { store, now }: Meeting,
  before: TeamProgress,
  { stopped = null, ...more }: Partial<TeamProgress>,
): Promise<Refusal | null> {
  const why = stopped === null ? null : { reason: stopped.reason, message: stopped.message };
  const kept = await store.progress();
  const inStepAt = why === null ? instant(now()) : before.inStepAt;
  const next: TeamProgress = { ...before, ...more, stopped: why, inStepAt };
  const isNews = JSON.stringify({ ...kept, inStepAt: 0 }) !== JSON.stringify({ ...next, inStepAt: 0 });
  const isOld = Math.abs((next.inStepAt ?? 0) - (kept.inStepAt ?? 0)) > RENEW;
  // Where there is no room for it, that is said wherever something is written, and all is asked for anew next time.
  if (isNews || isOld) await store.noteProgress(next);
  return why;
}
