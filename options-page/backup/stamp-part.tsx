import { useEffect, useRef, useState } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { ChainHead } from '../../src/journal/chain-head.ts';
import { checkStamps, type StampSeen } from '../../src/journal/stamp/check-stamps.ts';
import { saveFile } from '../../src/ui/save-file.ts';
import { TermLink } from '../../src/ui/term-link.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';

interface StampPartProps {
  /** The last entry that this browser wrote; undefined while it has written none. */
  readonly head: ChainHead | undefined;
}

/** The word of an outside authority that the journal was there at a time: a request out, its answer in, and what is stamped. */
export function StampPart({ head }: StampPartProps) {
  const { store, say } = useWorkspace();
  const [stamps, setStamps] = useState<readonly StampSeen[]>();
  const [refusal, setRefusal] = useState<string>();
  const input = useRef<HTMLInputElement>(null);
  const look = () =>
    store
      .stamps()
      // Each is of an entry here, or the store would not have kept it.
      .then((kept) => checkStamps(kept, (device, sequence) => hashOf(kept, device, sequence)))
      .then((found) => setStamps(found.stamps))
      .catch((error: unknown) => say(String(error)));
  useEffect(() => {
    void look();
  }, [store]);
  const save = async (of: ChainHead) => {
    const { stampRequest } = await import('../../src/journal/stamp/stamp-request.ts');
    const request = await stampRequest(of);
    saveFile(new Blob([request], { type: 'application/timestamp-query' }), `headroom-entry-${of.sequence}.tsq`);
    say(`Request for entry number ${of.sequence.toLocaleString('en-US')} saved to your downloads.`);
  };
  const take = async (file: File) => {
    setRefusal(undefined);
    try {
      const { takeStamp } = await import('../../src/store/signing/take-stamp.ts');
      const taken = await takeStamp(store, new Uint8Array(await file.arrayBuffer()));
      if (!taken.ok) return setRefusal(taken.message);
      say(`Time stamp of entry number ${taken.value.sequence.toLocaleString('en-US')} saved.`);
      await look();
    } catch (error) {
      setRefusal(error instanceof Error ? error.message : String(error));
    } finally {
      if (input.current) input.current.value = '';
    }
  };
  return (
    <section class="panel stack">
      <h2>
        <TermLink term="time-stamp">Time stamps</TermLink>
      </h2>
      <p>
        An outside time-stamp authority can confirm that your latest entry was there at a certain time. Save a request
        file, send it to the authority of your choice (RFC 3161), and bring its answer in here. The request holds a
        <TermLink term="fingerprint">fingerprint</TermLink> only, nothing of your lots. The answer then travels in your
        backups and evidence packs.
      </p>
      <p>
        Somebody with this computer could still write the whole journal anew and get new stamps for it; those would show
        a later time than the answers that you keep somewhere else.
      </p>
      <div class="row">
        <button type="button" disabled={head === undefined} onClick={() => head !== undefined && save(head)}>
          Save a time-stamp request
        </button>
      </div>
      {head === undefined && <p class="quiet small">This browser has written no entry yet.</p>}
      <label class="field">
        <span class="label">Answer of the authority</span>
        <input
          ref={input}
          type="file"
          accept=".tsr,.tst,.der"
          onChange={(event) => {
            const chosen = event.currentTarget.files?.[0];
            if (chosen) void take(chosen);
          }}
        />
      </label>
      {refusal !== undefined && (
        <p class="note warning" role="alert">
          {refusal} Nothing was changed.
        </p>
      )}
      {stamps !== undefined && <Stamps stamps={stamps} head={head} />}
    </section>
  );
}

const hashOf = (kept: readonly ChainHead[], device: string, sequence: number) =>
  kept.find((stamp) => stamp.device === device && stamp.sequence === sequence)?.hash;

function Stamps({ stamps, head }: { stamps: readonly StampSeen[]; head: ChainHead | undefined }) {
  const { zone } = useWorkspace().setup.store;
  if (stamps.length === 0) return <p class="quiet">Nothing is stamped yet.</p>;
  const own = stamps.filter(({ device }) => device === head?.device);
  const last = Math.max(0, ...own.map(({ sequence }) => sequence));
  return (
    <>
      <table class="ledger stamps">
        <caption class="visually-hidden">What is stamped, when and by whom</caption>
        <thead>
          <tr>
            <th scope="col">Everything up to</th>
            <th scope="col">Was there before</th>
            <th scope="col">By the word of</th>
          </tr>
        </thead>
        <tbody>
          {stamps
            .toSorted((a, b) => b.at - a.at)
            .map(({ device, sequence, at, authority, issuer }) => (
              <tr key={`${device} ${sequence} ${at} ${authority}`}>
                <td>
                  entry {sequence.toLocaleString('en-US')} of {device === head?.device ? 'this browser' : device}
                </td>
                <td>{sayTime(instant(at), zone, instant(Date.now()))}</td>
                <td>
                  {authority}
                  <span class="quiet small"> (certificate by {issuer})</span>
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      {last > 0 && head !== undefined && head.sequence > last && (
        <p>{countWords(head.sequence - last, 'entry has', 'entries have')} been added since the last stamp.</p>
      )}
      <p class="quiet small">
        The names are as the certificates have them. Whether to trust an authority is for you to say.
      </p>
    </>
  );
}
