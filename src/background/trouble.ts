import type { Refusal } from '../domain/outcome.ts';
import type { World } from './world.ts';

/** Said once, and taken away when things can be saved again. */
const NOTICE = 'not-saved #/backup';
const NAME = 'trouble-said';

/** Whether nothing can be saved until the user makes room: only that is for him to mend. */
const isForTheUser = ({ reason }: Refusal): boolean => reason === 'disk-full';

/** Says in one sentence, once, that nothing can be saved and what to do about it. */
export async function sayTrouble(world: World, trouble: Refusal): Promise<void> {
  if (!isForTheUser(trouble) || (await world.recall<boolean>(NAME)) === true) return;
  await world.showNotice({
    id: NOTICE,
    title: 'Headroom can’t save anything now',
    body: `${trouble.message} Reminders still come, but none of your answers can be saved.`,
    loudness: 'loud',
    buttons: [],
  });
  await world.remember(NAME, true);
}

/** Things can be saved again. */
export async function endTrouble(world: World): Promise<void> {
  if ((await world.recall<boolean>(NAME)) !== true) return;
  await world.clearNotice(NOTICE);
  await world.remember(NAME, false);
}
