import { useEffect, useState } from 'preact/hooks';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';

const LONGEST = 80;

/** In whose name this browser writes. It belongs to the browser, not to the setup: another computer has its own. */
export function AuthorField() {
  const { store, say } = useWorkspace();
  const [name, setName] = useState<string>();
  useEffect(() => {
    store.author().then(
      ({ name: known }) => setName(known),
      (error: unknown) => say(String(error)),
    );
  }, [store, say]);
  const save = async (given = '') => {
    const kept = await store.setAuthor(given);
    if (!kept.ok) return say(kept.message);
    setName(given.trim());
    say(`Saved. From now on, what you do here is recorded as done by ${given.trim()}.`);
  };
  return (
    <fieldset class="stack">
      <legend>This browser</legend>
      <div class="fields">
        <TextInput
          label="Who uses this browser"
          hint="Bids, results, receipts and closed months are recorded under this name. Earlier ones keep theirs."
          value={name}
          longest={LONGEST}
          required
          onCommit={(given) => void save(given)}
        />
      </div>
    </fieldset>
  );
}
