import type { CloseTime } from '../../domain/time/close-time.ts';
import { DAY } from '../../domain/time/units.ts';
import type { PageNode } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { ScoredReading } from '../draft/settle-readings.ts';
import type { Besides } from './resolve-moment.ts';

/** A moment far from now is something else: a build date, a cache key, a year misread. */
export function addClose(
  close: CloseTime,
  reading: Omit<ScoredReading<CloseTime>, 'value'>,
  node: PageNode | null,
  { clock }: Pick<Besides, 'clock'>,
  into: Candidates,
): void {
  if (close.instant < clock.now - 60 * DAY || close.instant > clock.now + 200 * DAY) return;
  into.add('close', { value: close, ...reading }, node);
}
