import { useEffect, useId, useState } from 'preact/hooks';
import { isDemo } from '../../src/ui/demo-mode.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import './who-asks.css';

const LONGEST = 80;

/** Asks once, in each browser, in whose name it writes: everything that is kept carries that name. The demo doesn't ask. */
export function WhoAsks() {
  const { store, say } = useWorkspace();
  const id = useId();
  const [asks, setAsks] = useState(false);
  const [name, setName] = useState('');
  useEffect(() => {
    const look = () =>
      store.author().then(
        ({ given }) => setAsks(!given),
        (error: unknown) => say(String(error)),
      );
    void look();
    // Whoever joins a team has said so by that.
    return store.subscribe(({ team }) => {
      if (team === true) void look();
    });
  }, [store, say]);
  if (!asks || isDemo()) return null;
  const save = async () => {
    const kept = await store.setAuthor(name);
    if (!kept.ok) return say(kept.message);
    setAsks(false);
    say(`Saved. From now on, what you do here is recorded as done by ${name.trim()}.`);
  };
  return (
    <form
      class="who-asks no-print"
      aria-label="Who uses this browser"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <label class="strong" for={id}>
        Who uses this browser?
      </label>
      <input
        id={id}
        value={name}
        maxLength={LONGEST}
        autoComplete="off"
        placeholder="buyer, manager, or a name"
        onInput={(event) => setName(event.currentTarget.value)}
      />
      <button type="submit">Save the name</button>
    </form>
  );
}
