import { sayNumber } from '../number/say-number.ts';
import { sayReaderScores } from '../reader/say-scores.ts';
import { sayVisits } from '../reader/visits/say-visits.ts';

/** What `npm run scores -- NAME` can print; `reader` where no name is given. */
const SCORES: Readonly<Record<string, (flags: readonly string[]) => Promise<void>>> = {
  reader: sayReaderScores,
  visits: sayVisits,
  number: sayNumber,
};

/** `npm run scores [-- NAME]`: how well a part of the program does what it is for, as the documents keep it. */
export async function run(flags: readonly string[] = []): Promise<number> {
  const [name = 'reader', ...more] = flags;
  const say = Object.hasOwn(SCORES, name) ? SCORES[name] : undefined;
  if (say === undefined) {
    console.error(`There are no scores of “${name}”. There are: ${Object.keys(SCORES).join(', ')}.`);
    return 1;
  }
  await say(more);
  return 0;
}
