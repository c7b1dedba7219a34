import { expect, test } from 'vitest';
import { scoreOf } from './saturdays/score.ts';
import { written } from './saturdays/script.ts';

/** `npm run scores -- saturday` plays all of them. */
const PLAYED = ['s10'];

test.each(written.scripts.filter(({ id }) => PLAYED.includes(id)))(
  'on the Saturday “$name” every last call comes in time with its number, and few notices come at all',
  async (script) => {
    const { missed, wrong, inTime } = await scoreOf(script);
    expect({ missed, wrong, inTime }).toEqual({ missed: [], wrong: [], inTime: script.lastCalls.length });
  },
  180_000,
);
