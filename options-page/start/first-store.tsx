import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { ZoneInput } from '../../src/ui/inputs/zone-input.tsx';
import type { PartProps } from './part-props.ts';

interface FirstStoreProps extends PartProps {
  readonly author: string | undefined;
  readonly onAuthor: (name: string | undefined) => void;
}

/** Who writes here, and by which clock. */
export function FirstStore({ draft, put, author, onAuthor }: FirstStoreProps) {
  return (
    <fieldset class="stack">
      <legend>You and your store</legend>
      <div class="fields">
        <TextInput
          label="Who uses this browser"
          value={author}
          longest={80}
          placeholder="your name"
          hint="What you do is recorded under this name"
          onCommit={onAuthor}
        />
        <TextInput
          label="Name of the store"
          value={draft.storeName}
          longest={80}
          hint="For printed sheets; may stay blank"
          onCommit={(storeName) => put({ storeName })}
        />
        <ZoneInput
          label="Time zone of the store"
          value={draft.zone}
          // The venue stays where the store is until somebody says where it is.
          onCommit={(zone) => put({ zone, ...(draft.venueZone === draft.zone && { venueZone: zone }) })}
        />
      </div>
    </fieldset>
  );
}
