import { instant } from '../../../src/domain/time/instant.ts';
import { sayClock } from '../../../src/domain/time/say-time.ts';
import { BOISE } from '../invented-saturday.ts';
import { type Score, scoreOf } from './score.ts';
import { written } from './script.ts';

/** Prints what each of the written Saturdays comes to; with the id of one, such as `s02`, every notice of it as well. */
export async function saySaturdays([one]: readonly string[]): Promise<void> {
  const scores: Score[] = [];
  for (const script of written.scripts) if (one === undefined || script.id === one) scores.push(await scoreOf(script));
  if (one !== undefined) for (const score of scores) console.log(played(score));
  console.log(table(scores));
}

/** Each notice of a Saturday in order, as its user saw it. */
const played = ({ script, shown }: Score): string =>
  [
    `== ${script.id} ${script.name}`,
    ...shown.map(
      ({ at, notice }) =>
        `${sayClock(instant(at), BOISE).padStart(8)} ${notice.loudness === 'loud' ? 'LOUD ' : '     '} ${notice.title}\n${notice.body
          .split('\n')
          .map((line) => `                 ${line}`)
          .join('\n')}`,
    ),
  ].join('\n');

/** One line a Saturday, and what was not as it should be. */
const table = (scores: readonly Score[]): string =>
  [
    '| Saturday | notices | loud | most in an hour | last calls in time | missed | otherwise wrong |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
    ...scores.map(
      ({ script, notices, loud, mostInAnHour, inTime, missed, wrong }) =>
        `| ${script.name} | ${notices} | ${loud} | ${mostInAnHour} | ${inTime} | ${missed.length} | ${wrong.length} |`,
    ),
    ...scores.flatMap(({ script, missed, wrong }) =>
      [...missed.map((lot) => `missed ${lot}`), ...wrong].map((words) => `${script.id}: ${words}`),
    ),
  ].join('\n');
