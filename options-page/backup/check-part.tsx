import { useState } from 'preact/hooks';
import { type ChainHead, writeHead } from '../../src/journal/chain-head.ts';
import type { JournalCheck } from '../../src/store/journal/check-journal.ts';
import { NotedHeadInput } from '../../src/ui/inputs/noted-head-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';

/** Whether the journal is as it was written, and what that can prove. */
export function CheckPart({ heads }: { heads: readonly ChainHead[] }) {
  const { store, say } = useWorkspace();
  const [check, setCheck] = useState<JournalCheck>();
  const [busy, setBusy] = useState(false);
  const [noted, setNoted] = useState<ChainHead>();
  const run = async () => {
    setBusy(true);
    try {
      setCheck(await store.checkJournal(noted));
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
    } finally {
      setBusy(false);
    }
  };
  const faults =
    check === undefined
      ? []
      : [
          ...notedFault(check),
          ...check.findings.map(({ message }) => message),
          ...check.unreadable,
          ...check.attachments.faults,
        ];
  return (
    <section class="panel stack">
      <h2>Check the journal</h2>
      <p>
        Each entry carries a fingerprint of itself and of the entry before it, so a change, a gap or a swap shows. Two
        things don’t show on their own: the last entries were cut off, or somebody using this computer rewrote the
        journal from some entry on. To catch those, write down the last fingerprint somewhere else now and then, and
        enter it here.
      </p>
      <NotedHeadInput value={noted} onCommit={setNoted} />
      <div class="row">
        <button type="button" disabled={busy} onClick={run}>
          {busy ? 'Checking…' : 'Check every entry'}
        </button>
      </div>
      {check !== undefined && (
        <div role="status" class={faults.length > 0 ? 'note warning stack' : 'note'}>
          {faults.length === 0 ? (
            <p>
              {countWords(check.entries, 'entry', 'entries')} checked. Nothing was changed.
              {check.noted === 'kept' && ' The entry you noted is there, so nothing before it was changed.'}
              {check.attachments.files > 0 &&
                ` So ${countWords(check.attachments.files, 'is the attached file', 'are the attached files')}.`}
            </p>
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
          <summary>The latest fingerprints, to write down somewhere else</summary>
          <ul class="plain-list small">
            {heads.map((head) => (
              <li key={head.device}>
                <code>{writeHead(head)}</code>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function notedFault({ noted }: JournalCheck): string[] {
  if (noted === 'rewritten') return ['A different entry is where the noted one was. The journal was rewritten.'];
  return noted === 'cut-off'
    ? ['The noted entry is gone. The journal was cut short before it, or this is a different journal.']
    : [];
}
