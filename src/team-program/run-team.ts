import type { Outcome, Refusal } from '../domain/outcome.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { SECOND } from '../domain/time/units.ts';
import type { KeptTeam } from '../store/connection/kept-team.ts';
import type { TeamStore } from '../store/team/team-store.ts';
import { meetTeam } from './meet.ts';
import { secretOf } from './team-secret.ts';
import type { Entered } from './way-in.ts';

/** How often the server is asked for news while a page of ours is open, in milliseconds. */
const LOOK = 2 * SECOND;
/** A server that does not answer is tried again after this, and after twice as long each time up to the second. */
const RETRY = { first: 1 * SECOND, most: 10 * SECOND } as const;
/** How long it stays after everything was sent and fetched when no page is open: changes often come several at a time. */
const LINGER = 3 * SECOND;

/** `while open`: until `stop` says so. `briefly`: once, and what is written meanwhile. */
export type HowLong = 'while open' | 'briefly';

export interface TeamRun {
  readonly store: TeamStore;
  readonly enter: (team: KeptTeam) => Promise<Outcome<Entered, Refusal>>;
  /** Whether the user lets nothing be sent, in the browser's settings; asked before each meeting, null for no. */
  readonly mayNotSend?: () => Promise<Refusal | null>;
  readonly now: () => Instant;
  readonly how: HowLong;
  /** Ends a run that is `while open`. */
  readonly stop?: AbortSignal;
  /** Told when something came in. */
  readonly onNews?: () => void;
  /** How long a brief run stays for what is written meanwhile, in milliseconds. */
  readonly linger?: number;
}

/** Sends and fetches again and again. A server that can't be reached is noted, and no more than that. */
export async function runTeam(run: TeamRun): Promise<void> {
  const { store, enter, now, how, stop, onNews, linger = LINGER } = run;
  const calls = callsFor(store);
  let entered: Entered | null = null;
  let retry: number = RETRY.first;
  let until = now() + linger;
  try {
    while (stop?.aborted !== true) {
      const team = await store.team();
      if (team === null) return;
      const refused = (await run.mayNotSend?.()) ?? null;
      if (refused !== null) {
        await entered?.wire.close();
        entered = null;
        await noteStopped(store, refused);
      } else if (entered === null) {
        const tried = await enter(team);
        if (tried.ok) entered = tried.value;
        else await noteStopped(store, tried);
      }
      const stopped = entered === null ? null : await meet(entered, team);
      const isLost = entered === null || (stopped !== null && LOST.has(stopped.reason));
      if (isLost) {
        await entered?.wire.close();
        entered = null;
        if (how === 'briefly') return;
      } else retry = RETRY.first;
      const called = await calls.rest(isLost ? retry : Math.min(LOOK, how === 'briefly' ? linger : LOOK), stop);
      if (isLost) retry = Math.min(RETRY.most, retry * 2);
      if (how === 'briefly') {
        if (called) until = now() + linger;
        else if (now() >= until || now() + linger < until) return;
      }
    }
  } finally {
    calls.close();
    await entered?.wire.close();
  }

  /** With the team as it lies in the store now: an invitation may have been made meanwhile. */
  function meet({ wire, team: atFirst, state: first }: Entered, kept: KeptTeam): Promise<Refusal | null> {
    const secret = secretOf(kept);
    const [team, state] = secret.is === 'in' ? [kept, secret.state] : [atFirst, first];
    return meetTeam({ store, wire, team, now, ...(onNews && { onNews }) }, state);
  }
}

/** After these the connection is of no more use. */
const LOST: ReadonlySet<string> = new Set(['no-connection', 'not-allowed', 'put-out']);

async function noteStopped(store: TeamStore, { reason, message }: Refusal): Promise<void> {
  const before = await store.progress();
  if (before.stopped?.message === message) return;
  await store.noteProgress({ ...before, stopped: { reason, message } });
}

/** Rests that end when something was written here, in any tab. */
function callsFor(store: TeamStore) {
  let call: () => void = () => undefined;
  let called = false;
  const close = store.subscribe(({ lots, setup, alerts, books, keptTeam }) => {
    if (lots !== 'many' && lots.length === 0 && !setup && !alerts && books !== true && keptTeam !== true) return;
    called = true;
    call();
  });
  return {
    close,
    /** True when it was ended by a write. */
    async rest(ms: number, stop: AbortSignal | undefined): Promise<boolean> {
      if (!called && stop?.aborted !== true) {
        await new Promise<void>((resolve) => {
          const timer = setTimeout(resolve, ms);
          call = () => {
            clearTimeout(timer);
            resolve();
          };
          stop?.addEventListener('abort', call, { once: true });
        });
      }
      const was = called;
      called = false;
      return was;
    },
  };
}

/** This browser's clock. */
export const thisClock = (): Instant => instant(Date.now());
