import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

export interface LazyProps<Props> {
  /** Loads the screen's code; must be the same function at every render. */
  readonly load: () => Promise<ComponentType<Props>>;
  readonly props: Props;
  readonly meanwhile?: ComponentChildren;
}

/** A screen whose code is read when it is first opened, so that the watchlist does not wait for it. */
export function Lazy<Props extends object>({ load, props, meanwhile = null }: LazyProps<Props>) {
  const [loaded, setLoaded] = useState<{ Screen?: ComponentType<Props>; fault?: string }>({});
  useEffect(() => {
    let current = true;
    load().then(
      (Screen) => current && setLoaded({ Screen }),
      (error) => current && setLoaded({ fault: String(error) }),
    );
    return () => {
      current = false;
    };
  }, [load]);
  if (loaded.fault !== undefined) {
    return (
      <p class="note warning">This screen could not be read ({loaded.fault}). Reload the page; nothing is lost.</p>
    );
  }
  const { Screen } = loaded;
  return Screen === undefined ? meanwhile : <Screen {...props} />;
}
