import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type Instant, instant } from '../../domain/time/instant.ts';
import { localDateSchema, localTimeSchema } from '../../domain/time/local-date.ts';
import { resolveWallTime } from '../../domain/time/resolve-wall-time.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { FieldFrame } from './field.tsx';

export interface MomentInputProps {
  readonly label: string;
  readonly value: Instant | undefined;
  /** The time zone in which it is written. */
  readonly zone: Zone;
  /** Called with each moment that can be read; undefined when the box is empty or holds half of one. */
  readonly onChange: (value: Instant | undefined) => void;
  readonly hint?: ComponentChildren;
}

/** A date and a time of day on one clock, in the browser's own box. A time that comes twice is taken as the first. */
export function MomentInput({ label, value, zone, onChange, hint }: MomentInputProps) {
  const written = value === undefined ? '' : write(value, zone);
  // What is half typed stays in the box; what someone else sets replaces it.
  const [text, setText] = useState(written);
  const [last, setLast] = useState(written);
  if (written !== last) {
    setLast(written);
    setText(written);
  }
  return (
    <FieldFrame label={label} hint={hint}>
      {({ id, describedBy }) => (
        <input
          id={id}
          type="datetime-local"
          value={text}
          aria-describedby={describedBy}
          onInput={(event) => {
            const typed = event.currentTarget.value;
            const moment = read(typed, zone);
            setText(typed);
            setLast(moment === undefined ? '' : write(moment, zone));
            onChange(moment);
          }}
        />
      )}
    </FieldFrame>
  );
}

function write(at: Instant, zone: Zone): string {
  const { date, time } = wallClock(at, zone);
  return `${date}T${time}`;
}

function read(text: string, zone: Zone): Instant | undefined {
  const [day = '', clock = ''] = text.split('T');
  const date = localDateSchema.safeParse(day);
  const time = localTimeSchema.safeParse(clock.slice(0, 5));
  // A year that is still being typed (0002) is before anything can be counted.
  if (!date.success || !time.success || date.data < '1990-01-01' || date.data > '2199-12-31') return undefined;
  return instant(resolveWallTime({ date: date.data, time: time.data }, zone).earliest);
}
