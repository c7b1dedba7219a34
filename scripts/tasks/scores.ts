import { sayLearn } from '../learn/say-learn.ts';
import { sayNumber } from '../number/say-number.ts';
import { sayWeekends } from '../plan/weekends/say-weekends.ts';
import { sayReaderScores } from '../reader/say-scores.ts';
import { sayVisits } from '../reader/visits/say-visits.ts';

/** Loads a file that stands beside the tests. */
type Load = (file: string) => Promise<unknown>;
type SaturdayScores = typeof import('../../tests/background/saturdays/say.ts');

/** What `npm run scores -- NAME` can print; `reader` where no name is given. */
const SCORES: Readonly<Record<string, (flags: readonly string[], load: Load) => Promise<void>>> = {
  reader: sayReaderScores,
  visits: sayVisits,
  number: sayNumber,
  plan: sayWeekends,
  learn: sayLearn,
  async saturday(flags, load) {
    const { saySaturdays } = (await load('tests/background/saturdays/say.ts')) as SaturdayScores;
    await saySaturdays(flags);
  },
};

/** `npm run scores [-- NAME]`: how well a part of the program does what it is for, as the documents keep it. */
export async function run(flags: readonly string[], load: Load): Promise<number> {
  const [name = 'reader', ...more] = flags;
  const say = Object.hasOwn(SCORES, name) ? SCORES[name] : undefined;
  if (say === undefined) {
    console.error(`There are no scores of “${name}”. There are: ${Object.keys(SCORES).join(', ')}.`);
    return 1;
  }
  await say(more, load);
  return 0;
}
