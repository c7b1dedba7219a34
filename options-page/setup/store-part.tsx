import { DEMO_HREF } from '../../src/ui/demo-mode.ts';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { ZoneInput } from '../../src/ui/inputs/zone-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { AuthorField } from './author-field.tsx';
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
      intro="The name is on printed sheets. Every close is shown in store time, whatever zone a sale states."
    >
      {!setupKept && (
        <section class="panel stack setup-prose">
          <h2>Where to start</h2>
          <p>
            Everything here has a starting value, so the first max bid needs only three things: a venue, its buy fees,
            and the minimum profit you would do a deal for. Each change is saved at once and can be undone.
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
          onCommit={(name = '') => change({ store: { ...store, name } }, 'Store name saved.')}
        />
        <ZoneInput
          label="Time zone of the store"
          value={store.zone}
          onCommit={(zone) => change({ store: { ...store, zone } }, `Store time zone set to ${zone}.`)}
        />
        <TextInput
          label="How to reach the buyer"
          hint="Printed on the day sheet, for whoever is on duty."
          value={store.contact}
          longest={120}
          placeholder="Cell phone, or which desk to call"
          onCommit={(contact) => {
            const { contact: _, ...rest } = store;
            return change({ store: contact === undefined ? rest : { ...rest, contact } }, 'Saved.');
          }}
        />
      </div>
      <AuthorField />
      <p class="small">
        <a href={DEMO_HREF}>Open the demo</a>: a made-up dealer’s week beside your own data, which it never touches.
      </p>
    </PartFrame>
  );
}
