import type { DraftFieldName, FieldValue } from '../../capture/draft/draft-lot.ts';
import { readCloseTime } from '../../domain/close/read-close-time.ts';
import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseYear } from '../../domain/lot/parse-year.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import { instant } from '../../domain/time/instant.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import { MoneyInput } from '../../ui/inputs/money-input.tsx';
import { ReadInput } from '../../ui/inputs/read-input.tsx';
import { TextInput } from '../../ui/inputs/text-input.tsx';

interface FieldInputProps {
  readonly name: DraftFieldName;
  readonly label: string;
  readonly value: FieldValue<DraftFieldName> | undefined;
  readonly storeZone: Zone;
  readonly venueZone: Zone | undefined;
  readonly onCommit: (value: FieldValue<DraftFieldName> | undefined) => void;
}

/** The box to put a drafted field right, of the kind that the field wants. */
export function FieldInput({ name, label, value, storeZone, venueZone, onCommit }: FieldInputProps) {
  const now = () => instant(Date.now());
  switch (name) {
    case 'year':
    case 'miles':
      return (
        <ReadInput<number>
          label={label}
          value={typeof value === 'number' ? value : undefined}
          write={(figure) => (name === 'year' ? String(figure) : figure.toLocaleString('en-US'))}
          read={(text) =>
            name === 'year' ? parseYear(text, Number(wallClock(now(), storeZone).date.slice(0, 4))) : parseMiles(text)
          }
          numeric
          onCommit={onCommit}
        />
      );
    case 'priceNow':
    case 'nextBid':
    case 'increment':
    case 'buyNow':
      // The schema of these four fields holds cents; the union of all fields' values can't say so.
      return <MoneyInput label={label} value={value as Cents | undefined} onCommit={onCommit} />;
    case 'close':
      return (
        <ReadInput<CloseTime>
          label={label}
          value={typeof value === 'object' ? value : undefined}
          write={(close) => close.text}
          read={(text) =>
            readCloseTime(text, { now: now(), storeZone, ...(venueZone === undefined ? {} : { venueZone }) })
          }
          placeholder="Sat Nov 28 2:05 PM ET"
          onCommit={onCommit}
        />
      );
    case 'vin':
      return <TextInput label={label} value={text(value)} longest={40} read={readVin} onCommit={onCommit} />;
    default:
      return <TextInput label={label} value={text(value)} onCommit={onCommit} />;
  }
}

const text = (value: FieldValue<DraftFieldName> | undefined): string | undefined =>
  typeof value === 'string' ? value : undefined;
