import { useState } from 'preact/hooks';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { PackShows } from '../../src/journal/happenings/row.ts';
import { RadioChoice } from '../../src/ui/inputs/radio-choice.tsx';
import { saveFile } from '../../src/ui/save-file.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { CheckPack } from './check-pack.tsx';
import { makePack } from './make-pack.ts';

/** The evidence pack, with what it can and cannot prove beside the button; and the check of one that came back. */
export function EvidencePart({ lot }: { lot: LotState }) {
  const { store, setup, say } = useWorkspace();
  const [shows, setShows] = useState<PackShows>('sale');
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string>();
  const make = async () => {
    setBusy(true);
    setFault(undefined);
    try {
      const pack = await makePack({ store, setup, lot, shows });
      if (!pack.ok) return setFault(pack.message);
      saveFile(pack.value, `evidence-${fileWords(lot)}.html`);
      say('Evidence pack checked and saved to your downloads.');
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <section class="panel stack no-print">
      <h2>Evidence pack</h2>
      <p>
        One file with the history, the pictures and the fingerprints. Anyone can open and check it without Headroom. It
        shows that none of this lot’s entries was changed, removed or added later. It can’t show that what was typed is
        true, that this computer’s clock was right, or who was using it. It also can’t show on its own that the last
        entries weren’t cut off or the whole journal rewritten. For that, send the latest fingerprint (on the{' '}
        <a href="#/backup">Backup</a> page) to someone early.
      </p>
      <RadioChoice
        legend="Include"
        value={shows}
        choices={[
          {
            value: 'sale',
            label: 'The sale: receipts, results with our max bid at the time, files',
          },
          {
            value: 'dispute',
            label: 'The sale and the dispute: steps, talks and offers, what was done after the win',
          },
          { value: 'everything', label: 'Everything about this lot, our estimates and notes too' },
        ]}
        onCommit={setShows}
      />
      <p class="quiet small">For other lots it holds only fingerprints, authors and times.</p>
      <div class="row">
        <button type="button" class="main" disabled={busy} onClick={make}>
          {busy ? 'Making the pack…' : 'Save an evidence pack'}
        </button>
      </div>
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault}
        </p>
      )}
      <CheckPack />
    </section>
  );
}

const fileWords = ({ facts, id }: LotState): string =>
  lotTitle(facts)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60) || id.toLowerCase();
