import type { Alert } from '../domain/alerts/alert.ts';
import { HELD_BACK, type HeldBack } from '../views/lots/held-back.ts';
import type { World } from './world.ts';

/** Keeps what waits where the Now screen finds it; nothing is written where the user set no limit and nothing waited. */
export async function keepHeldBack(world: World, held: readonly Alert[], most: number | null): Promise<void> {
  if (most === null && held.length === 0) return;
  const next = held.map(({ title, body, route }): HeldBack => ({ title, body, route }));
  const before = await world.recall<readonly HeldBack[]>(HELD_BACK);
  if (JSON.stringify(before ?? []) !== JSON.stringify(next)) await world.remember(HELD_BACK, next);
}
