import { useState } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';
import { FilePick } from './file-pick.tsx';
import { useKeepFiles } from './use-keep-files.ts';

/** The papers and pictures that the case stands on: what is here, and what is still missing. */
export function NeedsPart({ shown }: { shown: ShownDispute }) {
  const { lot, dispute, missing } = shown;
  const { note } = useAfterVerbs();
  const keepFiles = useKeepFiles(lot);
  const [added, setAdded] = useState('');
  const got = async (need: string, files: readonly File[] = []) => {
    const hashes = await keepFiles(files);
    if (hashes === null) return;
    const step = { what: 'got' as const, need, at: instant(Date.now()), ...(hashes.length > 0 && { files: hashes }) };
    await note(lot, { kind: 'dispute-stepped', dispute: dispute.entry, step }, `Received: ${need}.`);
  };
  const setNeeds = (needs: string[], sentence: string) =>
    note(lot, { kind: 'dispute-changed', dispute: dispute.entry, set: { needs }, clear: [] }, sentence);
  const add = async () => {
    const need = added.trim();
    if (need === '' || dispute.needs.includes(need)) return;
    const entry = await setNeeds([...dispute.needs, need], `Still needed: ${need}.`);
    if (entry !== null) setAdded('');
  };
  return (
    <section class="stack">
      <h2>
        Still missing <span class="quiet small">{missing.length === 0 ? 'nothing' : missing.length}</span>
      </h2>
      <ul class="won-steps">
        {missing.map((need) => (
          <li key={need} class="need-row">
            <span>{need}</span>
            <span class="row no-print">
              <button type="button" aria-label={`Received: ${need}`} onClick={() => got(need)}>
                Received
              </button>
              <FilePick label={`Attach: ${need}`} words="Attach a file" onPick={(files) => got(need, files)} />
              <button
                type="button"
                class="plain"
                aria-label={`Not needed: ${need}`}
                onClick={() =>
                  setNeeds(
                    dispute.needs.filter((each) => each !== need),
                    `Not needed: ${need}.`,
                  )
                }
              >
                Not needed
              </button>
            </span>
          </li>
        ))}
      </ul>
      <div class="row dispute-line no-print">
        <div class="field">
          <label class="label" for="dispute-need">
            Something else needed
          </label>
          <input
            id="dispute-need"
            value={added}
            maxLength={120}
            placeholder="Driver’s statement"
            onInput={(event) => setAdded(event.currentTarget.value)}
          />
        </div>
        <button type="button" onClick={add}>
          Add
        </button>
      </div>
    </section>
  );
}
