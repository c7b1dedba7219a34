import type { Store } from '../store/store.ts';

interface TeamWorld {
  readonly openStore: () => Promise<{ readonly ok: true; readonly value: Store } | { readonly ok: false }>;
  readonly runTeamProgram: (onNews: () => void) => Promise<void>;
  readonly after: (ms: number, then: () => void) => () => void;
  readonly report: (error: unknown) => void;
}

/** Changes often come several at a time, and reminders come first. */
const CALM_MS = 500;

/**
 * Gives what to call after each look into the store: where this browser is in a team, the program runs that talks to its
 * server. Nothing waits for it. Where there is no team, that program is never loaded.
 * @param onNews called when something came in from the team, so that its reminders are planned
 */
export function teamKeeper({ openStore, runTeamProgram, after, report }: TeamWorld, onNews: () => void): () => void {
  let callOff: () => void = () => undefined;
  const see = async () => {
    const opened = await openStore();
    if (!opened.ok) return;
    const team = await opened.value.team().finally(() => opened.value.close());
    if (team !== null) await runTeamProgram(onNews);
  };
  return () => {
    callOff();
    callOff = after(CALM_MS, () => void see().catch(report));
  };
}
