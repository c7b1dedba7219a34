import { useState } from 'preact/hooks';
import type { ChainHead } from '../../src/journal/chain-head.ts';
import type { JournalCheck } from '../../src/store/check-journal.ts';
import { countWords } from '../../src/ui/count-words.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** Whether the journal is as it was written, and what that can prove. */
export function CheckPart({ heads }: { heads: readonly ChainHead[] }) {
  const { store, say } = useWorkspace();
  const [check, setCheck] = useState<JournalCheck>();
  const [busy, setBusy] = useState(false);
  const run = async () => {
    setBusy(true);
    try {
      setCheck(await store.checkJournal());
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
    } finally {
      setBusy(false);
    }
  };
  const faults = check === undefined ? [] : [...check.findings.map(({ message }) => message), ...check.unreadable];
  return (
    <section class="panel stack">
      <h2>Is the journal whole?</h2>
      <p>
        Every entry carries a fingerprint of itself and of the entry before it, so a change, a gap or a swap shows. It
        can’t show a journal that somebody rewrote from end to end: for that, note the last fingerprint somewhere else
        now and then.
      </p>
      <div class="row">
        <button type="button" disabled={busy} onClick={run}>
          {busy ? 'Checking…' : 'Check every entry'}
        </button>
      </div>
      {check !== undefined && (
        <div role="status" class={faults.length > 0 ? 'note warning stack' : 'note'}>
          {faults.length === 0 ? (
            <p>{countWords(check.entries, 'entry', 'entries')} checked: each is as it was written.</p>
          ) : (
            <>
              <p>
                {countWords(faults.length, 'thing is', 'things are')} wrong in{' '}
                {countWords(check.entries, 'entry', 'entries')}:
              </p>
              <ul class="plain-list">
                {faults.slice(0, 50).map((fault) => (
                  <li key={fault}>{fault}</li>
                ))}
              </ul>
            </>
          )}
        </div>
      )}
      {heads.length > 0 && (
        <details>
          <summary>The last fingerprints, to be noted down elsewhere</summary>
          <ul class="plain-list small">
            {heads.map((head) => (
              <li key={head.device}>
                Device {head.device}, entry {head.sequence}: <code>{head.hash}</code>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
