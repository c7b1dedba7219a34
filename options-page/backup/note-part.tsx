import { useEffect, useState } from 'preact/hooks';
import { type ChainHead, writeHead } from '../../src/journal/chain-head.ts';
import { type DeviceKey, writeKey } from '../../src/journal/signed-head.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** What to note down somewhere else: the last fingerprints, and the keys that devices sign with. */
export function NotePart({ heads }: { heads: readonly ChainHead[] }) {
  const { store, say } = useWorkspace();
  const [keys, setKeys] = useState<readonly DeviceKey[]>([]);
  useEffect(() => {
    store.knownKeys().then(setKeys, (error: unknown) => say(String(error)));
  }, [store, say, heads]);
  if (heads.length === 0) return null;
  return (
    <details>
      <summary>The latest fingerprints and keys, to write down somewhere else</summary>
      <p>
        Send them to yourself in a mail, or print them. A fingerprint noted today shows later that everything up to it
        is as it is now.
      </p>
      <ul class="plain-list small">
        {heads.map((head) => (
          <li key={head.device}>
            <code>{writeHead(head)}</code>
          </li>
        ))}
        {keys.map((key) => (
          <li key={key.device}>
            <code>{writeKey(key)}</code>
          </li>
        ))}
      </ul>
      {keys.length === 0 && (
        <p class="quiet small">
          No key yet: a browser makes one with its first backup or evidence pack, where it can sign (Ed25519).
        </p>
      )}
    </details>
  );
}
