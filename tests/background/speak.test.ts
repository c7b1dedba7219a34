import { expect, test } from 'vitest';
import { speak } from '../../src/background/speak.ts';
import { unrecorded } from '../../src/background/unrecorded.ts';
import { THIS_WORLD, type World } from '../../src/background/world.ts';
import type { Alert } from '../../src/domain/alerts/alert.ts';
import { ok, refuse } from '../../src/domain/outcome.ts';

const alert = (name: string): Alert => ({
  about: name,
  keys: [`key of ${name}`],
  title: name,
  body: '',
  loudness: 'loud',
  route: '#/now',
  offers: [],
  rank: [0, 0],
});

/** A world that refuses to show notices of one title. */
function worldWithout(refused: string) {
  const [shown, memory, reported]: [string[], Map<string, unknown>, unknown[]] = [[], new Map(), []];
  const world: World = {
    ...THIS_WORLD,
    noticeIds: async () => [],
    showNotice: async ({ title }) => {
      if (title === refused) throw new Error('made to fail');
      shown.push(title);
    },
    recall: async <Value>(name: string) => memory.get(name) as Value | undefined,
    remember: async (name, value) => void memory.set(name, value),
    report: (error) => void reported.push(error),
  };
  return { world, shown, reported };
}

test('an alert that can’t be shown costs only itself, and counts as unsaid', async () => {
  const { world, shown, reported } = worldWithout('second');
  const recorded: string[] = [];
  const record = async (keys: readonly string[]) => ok(recorded.push(...keys));
  expect(await speak(world, ['first', 'second', 'third'].map(alert), record)).toEqual({ said: 2, trouble: null });
  expect(shown).toEqual(['first', 'third']);
  expect(recorded).toEqual(['key of first', 'key of third']);
  expect(reported).toHaveLength(1);
});

test.each([
  ['is refused', async () => refuse('disk-full', 'The disk is full.')],
  ['fails', async () => Promise.reject(new Error('The disk is full.'))],
])('an alert whose record %s is said all the same, and not again', async (_, record) => {
  const { world, shown } = worldWithout('none of them');
  const alerts = ['first', 'second'].map(alert);
  const spoken = await speak(world, alerts, record);
  expect(spoken.said).toBe(2);
  expect(spoken.trouble?.message).toContain('The disk is full.');
  expect(await unrecorded(world)).toEqual(['key of first', 'key of second']);
  await speak(world, alerts, record);
  expect(shown).toEqual(['first', 'second']);
});
