import { useId, useState } from 'preact/hooks';
import type { Zone } from '../../domain/time/zone.ts';
import { clockDifference, clockIn } from '../../views/words/zone-clock.ts';
import { readZone, zoneNames } from '../../views/words/zone-names.ts';
import { useNow } from '../hooks/use-now.ts';
import { FieldFrame } from './field.tsx';
import { useReadBox } from './use-read-box.ts';

export interface ZoneInputProps {
  readonly label: string;
  readonly value: Zone;
  /** The zone that the difference is told from. */
  readonly storeZone?: Zone;
  readonly onCommit: (value: Zone) => void;
}

/** A time zone, found by typing a part of its name; under it what the clocks there show now. */
export function ZoneInput({ label, value, storeZone, onCommit }: ZoneInputProps) {
  const listId = useId();
  const now = useNow(15_000);
  // Four hundred names take a moment to work out, and most visits never open the list.
  const [opened, setOpened] = useState(false);
  const box = useReadBox<Zone>({
    value,
    write: (zone) => zone,
    read: readZone,
    required: true,
    onCommit: (zone) => zone !== undefined && onCommit(zone),
  });
  const difference = storeZone === undefined ? '' : `, ${clockDifference(value, storeZone, now)} the store`;
  return (
    <FieldFrame label={label} fault={box.fault} hint={`Now ${clockIn(value, now)} there${difference}`}>
      {({ id, describedBy, invalid }) => (
        <>
          <input
            id={id}
            list={listId}
            autoComplete="off"
            spellcheck={false}
            value={box.text}
            aria-describedby={describedBy}
            aria-invalid={invalid ? 'true' : undefined}
            onFocus={() => setOpened(true)}
            onInput={(event) => box.type(event.currentTarget.value)}
            onBlur={() => box.commit()}
            onKeyDown={box.onKeyDown}
          />
          <datalist id={listId}>
            {opened &&
              zoneNames().map(({ zone, name }) => (
                <option key={zone} value={zone}>
                  {name}
                </option>
              ))}
          </datalist>
        </>
      )}
    </FieldFrame>
  );
}
