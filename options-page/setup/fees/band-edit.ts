import type { FeeBand } from '../../../src/domain/fees/fee-schedule.ts';
import { bandFee } from '../../../src/domain/fees/fees-at.ts';
import { type Cents, cents, ZERO } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import type { RoundingMode } from '../../../src/domain/money/rounding.ts';

const FIRST_WIDTH = 50_000;
const FINEST = 100;

/**
 * A new band behind the one at `index`, starting where it breaks no rule: half-way to the next band, in whole dollars,
 * or behind the last one by as much as the last band is wide. It charges what its neighbor does, so that adding it
 * changes no fee until it is edited.
 */
export function bandAfter(bands: readonly FeeBand[], index: number): FeeBand {
  const before = bands[index];
  if (before === undefined) return { fromCents: ZERO, flatCents: ZERO, ratePpm: ppm(0) };
  const after = bands[index + 1];
  const width = before.fromCents - (bands[index - 1]?.fromCents ?? 0) || FIRST_WIDTH;
  return { ...before, fromCents: after === undefined ? cents(before.fromCents + width) : middle(before, after) };
}

function middle(before: FeeBand, after: FeeBand): Cents {
  const exact = (before.fromCents + after.fromCents) / 2;
  const whole = Math.round(exact / FINEST) * FINEST;
  // Between two bands a few cents apart there is no whole dollar.
  return cents(whole > before.fromCents && whole < after.fromCents ? whole : Math.ceil(exact));
}

/** What the fee falls from and to at the start of a band, where it falls. */
export interface FeeFall {
  readonly at: Cents;
  readonly from: Cents;
  readonly to: Cents;
}

export function fallAt(bands: readonly FeeBand[], index: number, rounding: RoundingMode): FeeFall | undefined {
  const band = bands[index];
  const before = bands[index - 1];
  if (band === undefined || before === undefined || band.fromCents <= before.fromCents) return undefined;
  const from = cents(bandFee(before, band.fromCents - 1, rounding));
  const to = cents(bandFee(band, band.fromCents, rounding));
  return to < from ? { at: band.fromCents, from, to } : undefined;
}
