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
        ? 'This browser has promised not to delete your lots on its own, even when the disk is nearly full. Removing Headroom from the browser, or the browser’s own “clear data”, still deletes them.'
        : 'This browser does not promise to keep your lots. Headroom has permission for unlimited storage so that they are not deleted when the disk is nearly full, but only a backup somewhere else is safe.'}
    </p>
  );
}
