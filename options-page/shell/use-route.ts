import { useEffect, useState } from 'preact/hooks';
import { type Route, readRoute } from './route.ts';

/** The screen the address asks for, followed as it changes. */
export function useRoute(): Route {
  const [route, setRoute] = useState(() => readRoute(location.hash));
  useEffect(() => {
    const follow = () => setRoute(readRoute(location.hash));
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return route;
}
