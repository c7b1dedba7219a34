import type { ComponentChildren } from 'preact';
import { PPM, type Ppm, ppm } from '../../domain/money/rate.ts';
import { ok, refuse } from '../../domain/outcome.ts';
import { ReadInput } from './read-input.tsx';

export interface RateInputProps {
  readonly label: string;
  readonly value: Ppm | undefined;
  readonly onCommit: (value: Ppm | undefined) => void;
  /** The highest percentage allowed. */
  readonly most?: number;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
  readonly unit?: string;
}

/** A rate, typed as a percentage with up to four decimals and kept exactly as parts per million. */
export function RateInput({ most = 100, unit = '%', ...frame }: RateInputProps) {
  return (
    <ReadInput<Ppm>
      {...frame}
      write={writePercent}
      read={(text) => {
        const digits = /^(\d+)(?:\.(\d{1,4}))?\s*%?$/.exec(text);
        if (digits === null) return refuse('not-a-rate', 'Write a percentage such as 8 or 8.625.');
        const value = Number(digits[1]) * 10_000 + Number((digits[2] ?? '').padEnd(4, '0'));
        if (value > most * 10_000) return refuse('out-of-range', `At most ${most}%.`);
        return ok(ppm(value));
      }}
      numeric
      after={unit}
    />
  );
}

const writePercent = (value: Ppm) => String(Number(((value / PPM) * 100).toFixed(4)));
