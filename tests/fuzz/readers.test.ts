import { expect, test } from 'vitest';
import { worked } from '../capture/worked.ts';
import { altered } from './alter.ts';
import { campaign } from './campaign.ts';
import { READERS } from './readers.ts';

// A sample; `npm run fuzz -- --count 1000000 --seed 1` takes hours. A failure names the seed that makes its input again.
const SAMPLE: Readonly<Record<string, number>> = { page: 12, csv: 30, pack: 30, invoice: 50 };

test.each(READERS)('no altered text makes the reader of $name throw, or takes it over a second', async (reader) => {
  const { failures } = await campaign(reader, 20_261_130, SAMPLE[reader.name] ?? 80);
  expect(failures).toEqual([]);
});

test.each(READERS)('what the reader of $name is given is read well before it is altered', async (reader) => {
  for (const text of reader.honest().slice(0, 3)) await reader.read(text);
});

test('a reader that throws or takes long is found, with the seed that makes its input again', async () => {
  const honest = ['one,two\n1,2', 'three,four\n3,4'];
  const picky = {
    name: 'picky',
    honest: () => honest,
    read: (text: string) => {
      if (text.includes('__proto__')) throw new Error('tripped');
    },
  };
  const { failures } = await campaign(picky, 1, 2000);
  expect(failures.length).toBeGreaterThan(0);
  for (const { seed, message } of failures) {
    expect(altered(honest, seed)).toContain('__proto__');
    expect(message).toContain('tripped');
  }
  const slow = {
    name: 'slow',
    honest: () => honest,
    read: () => {
      const from = worked();
      while (worked() - from < 1100);
    },
  };
  expect((await campaign(slow, 1, 1)).failures[0]?.message).toMatch(/^took \d/);
});

test('an altered text is the same for the same seed, and others for others', () => {
  const honest = ['{"a":1,"b":[1,2,3]}'];
  const some = Array.from({ length: 300 }, (_, seed) => altered(honest, seed));
  expect(Array.from({ length: 300 }, (_, seed) => altered(honest, seed))).toEqual(some);
  expect(new Set(some).size).toBeGreaterThan(250);
});
