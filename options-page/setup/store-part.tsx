import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { ZoneInput } from '../../src/ui/inputs/zone-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { PartFrame } from './part-frame.tsx';
import { useSetupEdit } from './setup-edit.ts';
import type { SetupPart } from './setup-parts.ts';

/** The dealership's name and the zone in which it lives. */
export function StorePart({ part }: { part: SetupPart }) {
  const { setupKept } = useWorkspace();
  const { setup, change } = useSetupEdit();
  const { store } = setup;
  return (
    <PartFrame
      part={part}
      intro="The name stands on printed sheets. Every close is shown in the store’s own time, whatever zone a sale states."
    >
      {!setupKept && (
        <section class="panel stack setup-prose">
          <h2>Where to start</h2>
          <p>
            Everything here has a value to begin with, so the first max bid needs only three things: a venue, its buy
            fees, and the least profit you would do a deal for. Each change is kept at once and can be undone.
          </p>
          <p>
            Got a setup from another computer? <a href="#/setup/file">Load its file</a> instead.
          </p>
        </section>
      )}
      <div class="fields">
        <TextInput
          label="Name of the store"
          value={store.name === '' ? undefined : store.name}
          longest={80}
          placeholder="Cottonwood Truck & Van"
          onCommit={(name = '') => change({ store: { ...store, name } }, 'Changed the name of the store.')}
        />
        <ZoneInput
          label="Time zone of the store"
          value={store.zone}
          onCommit={(zone) => change({ store: { ...store, zone } }, `The store’s time is now that of ${zone}.`)}
        />
        <TextInput
          label="How to reach the buyer"
          hint="Stands on the printed day sheet, for whoever is on duty."
          value={store.contact}
          longest={120}
          placeholder="Cell phone, or the desk to call"
          onCommit={(contact) => {
            const { contact: _, ...rest } = store;
            return change(
              { store: contact === undefined ? rest : { ...rest, contact } },
              'Changed how to reach the buyer.',
            );
          }}
        />
      </div>
    </PartFrame>
  );
}
