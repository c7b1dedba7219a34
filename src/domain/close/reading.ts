import type { CloseDoubt, CloseTime } from '../time/close-time.ts';
import type { Instant } from '../time/instant.ts';
import type { Zone } from '../time/zone.ts';

/** What a written close can mean, before one of its readings is taken to hold. */
export interface Reading {
  readonly zone: Zone;
  readonly moments: readonly Instant[];
  readonly doubts: readonly CloseDoubt[];
  readonly how: CloseTime['how'];
  readonly finest?: 'day' | 'hour';
}
