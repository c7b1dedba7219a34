import { useEffect } from 'preact/hooks';
import { loadTeamProgram } from '../../src/browser/team-program.ts';
import type { Store } from '../../src/store/store.ts';
import type * as Program from '../../src/team-program/program.ts';
import { isDemo } from '../../src/ui/demo-mode.ts';

/**
 * While this page is open, what the team does comes within seconds. Nothing of it is loaded where there is no team; of
 * several pages one does it, and the next takes over when that one is closed.
 */
export function useLiveTeam(store: Store): void {
  useEffect(() => {
    if (isDemo()) return;
    let running: AbortController | null = null;
    const see = async () => {
      const isIn = (await store.team()) !== null;
      if (!isIn) running?.abort();
      if (!isIn || running !== null) return;
      const stop = new AbortController();
      running = stop;
      try {
        const program = await loadTeamProgram<typeof Program>();
        await program.keepInStep('while open', { stop: stop.signal });
      } catch (error) {
        // Called off while it waited for its turn.
        if (!stop.signal.aborted) reportError(error);
      } finally {
        running = null;
      }
    };
    void see();
    const end = store.subscribe(({ keptTeam }) => {
      if (keptTeam === true) void see();
    });
    return () => {
      end();
      running?.abort();
    };
  }, [store]);
}
