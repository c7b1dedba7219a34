import { useEffect, useState } from 'preact/hooks';
import { noticesAllowed } from '../../src/browser/notifications.ts';

/** Said only where this browser shows no notices: then this page and the toolbar button are all that calls. */
export function NoticesNote() {
  const [allowed, setAllowed] = useState(true);
  useEffect(() => {
    noticesAllowed().then(setAllowed, () => setAllowed(false));
  }, []);
  if (allowed) return null;
  return (
    <p class="note warning small" role="alert">
      This browser shows no notifications, so you get no sound. Keep this page in sight: it and the number on the
      toolbar button show what is due. <a href="#/setup/alerts">What this browser can do</a>
    </p>
  );
}
