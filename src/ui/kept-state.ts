import { useEffect, useState } from 'preact/hooks';

/** A state that belongs to the page, so that it goes on while another screen is shown. */
export interface KeptState<State> {
  get(): State;
  set(state: State): void;
  /** The state as it stands, in a component. */
  use(): State;
}

export function keptState<State>(first: State): KeptState<State> {
  let state = first;
  const watching = new Set<(state: State) => void>();
  return {
    get: () => state,
    set(next) {
      state = next;
      for (const watch of watching) watch(next);
    },
    use() {
      const [seen, setSeen] = useState({ state });
      useEffect(() => {
        const watch = (next: State) => setSeen({ state: next });
        watching.add(watch);
        // It may have changed before anybody watched.
        watch(state);
        return () => {
          watching.delete(watch);
        };
      }, []);
      return seen.state;
    },
  };
}
