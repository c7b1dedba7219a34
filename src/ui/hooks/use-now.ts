import { useEffect, useState } from 'preact/hooks';
import { type Instant, instant } from '../../domain/time/instant.ts';

/** The time now, renewed every `everyMs` while the page can be seen, and at once when it is looked at again. */
export function useNow(everyMs: number): Instant {
  const [now, setNow] = useState(() => instant(Date.now()));
  useEffect(() => {
    const tick = () => {
      if (!document.hidden) setNow(instant(Date.now()));
    };
    const timer = setInterval(tick, everyMs);
    document.addEventListener('visibilitychange', tick);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', tick);
    };
  }, [everyMs]);
  return now;
}
