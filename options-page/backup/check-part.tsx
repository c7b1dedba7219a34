import { useState } from 'preact/hooks';
import type { Noted } from '../../src/journal/noted.ts';
import type { JournalCheck } from '../../src/store/journal/check-journal.ts';
import { NotedInput } from '../../src/ui/inputs/noted-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';

/** Whether the journal is as it was written, and what that can prove. */
export function CheckPart() {
  const { store, say } = useWorkspace();
  const [check, setCheck] = useState<JournalCheck>();
  const [busy, setBusy] = useState(false);
  const [noted, setNoted] = useState<Noted>();
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
  return (
    <section class="panel stack">
      <h2>Check the journal</h2>
      <p>
        Every entry carries a fingerprint of itself and of the entry before it, so a change, a gap or a swap shows. What
        can’t show by itself: that the last entries were cut off, or that somebody with this computer wrote the journal
        anew from some entry on. For that, note the last fingerprint somewhere else now and then, and give it to the
        check.
      </p>
      <NotedInput value={noted} onCommit={setNoted} />
      <div class="row">
        <button type="button" disabled={busy} onClick={run}>
          {busy ? 'Checking…' : 'Check every entry'}
        </button>
      </div>
      {check !== undefined && <Verdict check={check} />}
    </section>
  );
}

function Verdict({ check }: { check: JournalCheck }) {
  const { entries, findings, unreadable, attachments, noted } = check;
  const faults = [
    ...noted.flatMap(({ as, message }) => (as === 'kept' ? [] : message)),
    ...findings.map(({ message }) => message),
    ...unreadable,
    ...attachments.faults,
  ];
  const counted = countWords(entries, 'entry', 'entries');
  if (faults.length === 0)
    return (
      <div role="status" class="note">
        <p>
          {counted} checked: each has the fingerprint it states and follows the one before it.
          {noted.map(
            ({ noted: { device, sequence } }) =>
              ` The noted fingerprint is there: number 1 to ${sequence} of device ${device} are the entries of that time.`,
          )}
          {attachments.files > 0 &&
            ` ${countWords(attachments.files, 'attached file has', 'attached files have')} the bytes that an entry named.`}
        </p>
      </div>
    );
  return (
    <div role="status" class="note warning stack">
      <p>
        {countWords(faults.length, 'thing is', 'things are')} wrong in {counted}:
      </p>
      <ul class="plain-list">
        {faults.slice(0, 50).map((fault) => (
          <li key={fault}>{fault}</li>
        ))}
      </ul>
    </div>
  );
}
