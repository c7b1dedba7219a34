import { useEffect, useMemo, useState } from 'preact/hooks';
import type { TeamWatch } from '../../domain/alerts/team-watch.ts';
import type { Store } from '../../store/store.ts';
import type { TeamStanding } from '../../store/team/team-state.ts';
import { teamWatch } from '../../store/team/team-watch.ts';
import { useWorkspace } from '../workspace.ts';
import { useNow } from './use-now.ts';

/** How this browser stands to its team, renewed with every change; null in no team, undefined until it is known. */
export function useTeam(store: Store): TeamStanding | null | undefined {
  const [team, setTeam] = useState<TeamStanding | null>();
  useEffect(() => {
    let current = true;
    const look = () =>
      store.team().then(
        (found) => current && setTeam(found),
        // A store that can't be read says so on every screen.
        () => undefined,
      );
    void look();
    const stop = store.subscribe(() => void look());
    return () => {
      current = false;
      stop();
    };
  }, [store]);
  return team;
}

const LOOK_EVERY = 10_000;

/** The team as far as watching lots goes; absent in no team, and while this computer is out of step with it. */
export function useTeamWatch(): TeamWatch | undefined {
  const { store } = useWorkspace();
  const team = useTeam(store);
  const now = useNow(LOOK_EVERY);
  const watch = team === undefined || team === null ? undefined : teamWatch(team, now);
  // The same team is the same value, so that nothing is drawn anew because it was asked.
  const said = JSON.stringify(watch);
  return useMemo(() => (said === undefined ? undefined : (JSON.parse(said) as TeamWatch)), [said]);
}
