import { useEffect, useState } from 'preact/hooks';
import { askToKeep, hasPromisedToKeep } from '../../src/store/connection/kept-promise.ts';

/** Whether the browser promised to keep the lots, in plain words. */
export function PromiseNote() {
  const [promised, setPromised] = useState<boolean | null>(null);
  useEffect(() => {
    askToKeep()
      .then(hasPromisedToKeep)
      .then(setPromised, () => 'without an answer nothing is claimed');
  }, []);
  if (promised === null) return null;
  return (
    <p class="quiet small">
      {promised
        ? 'This browser has promised not to clear these lots by itself, however tight the disk gets. Taking Headroom out of the browser, or the browser’s own “clear data”, still throws them away.'
        : 'This browser gives no promise of its own to keep these lots. The permission for unlimited storage is there so that it does not clear them when the disk gets tight; a backup elsewhere is what you can count on.'}
    </p>
  );
}
