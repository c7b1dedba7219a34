import type { World } from './world.ts';

/**
 * Reminders that were said and could not be written down, by their keys. They are kept in memory so that they are not said
 * again every minute, and are written down as soon as that can be done.
 */
const NAME = 'unrecorded';

export const unrecorded = async (world: World): Promise<readonly string[]> =>
  (await world.recall<readonly string[]>(NAME)) ?? [];

export async function addUnrecorded(world: World, keys: readonly string[]): Promise<void> {
  await world.remember(NAME, [...new Set([...(await unrecorded(world)), ...keys])]);
}

export async function forgetUnrecorded(world: World, keys: readonly string[]): Promise<void> {
  const done = new Set(keys);
  await world.remember(
    NAME,
    (await unrecorded(world)).filter((key) => !done.has(key)),
  );
}
