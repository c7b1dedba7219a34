import { useEffect, useState } from 'preact/hooks';
import type { Store } from '../../store/store.ts';
import type { TeamStanding } from '../../store/team/team-state.ts';

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
