import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { HOUR } from '../../../src/domain/time/units.ts';
import { BEHAVIORS } from './behaviors.ts';
import { dollars, MIDNIGHT, Saturday, type Shown } from './saturday.ts';
import { type WrittenSaturday, written } from './script.ts';

/** What became of one Saturday. */
export interface Score {
  readonly script: WrittenSaturday;
  readonly notices: number;
  readonly loud: number;
  readonly mostInAnHour: number;
  readonly inTime: number;
  readonly missed: readonly string[];
  /** What else was not as it should be, in words. */
  readonly wrong: readonly string[];
  readonly shown: readonly Shown[];
}

/** Plays a Saturday and judges it by what its writer wanted. */
export async function scoreOf(script: WrittenSaturday): Promise<Score> {
  const { begin, onNotice = () => undefined } = BEHAVIORS[script.id] ?? {};
  const saturday = await Saturday.begin(written.lotSets[script.lotSet] ?? [], onNotice);
  begin?.(saturday);
  await saturday.play();
  const shown = saturday.shown.filter(({ at }) => at >= MIDNIGHT);
  const loud = shown.filter(isLoud);
  const missed = script.lastCalls.filter((call) => !isCalled(call, saturday)).map(({ lot }) => lot);
  const [mostInAnHour, mostLoud] = [most(shown), most(loud)];
  const wrong = [
    shown.length > script.maxNotices && `${shown.length} notices, at most ${script.maxNotices}`,
    loud.length > script.maxLoud && `${loud.length} loud, at most ${script.maxLoud}`,
    mostInAnHour > script.maxNoticesInAnyHour && `${mostInAnHour} in an hour, at most ${script.maxNoticesInAnyHour}`,
    mostLoud > script.maxLoudInAnyHour && `${mostLoud} loud in an hour, at most ${script.maxLoudInAnyHour}`,
    saturday.shown.length - shown.length > script.eveningBefore && 'more than one notice on the evening before',
    ...saturday.lots.map(({ lot }) => {
      const times = loud.filter(({ names, wanting }) => (wanting.length > 0 ? wanting : names).includes(lot)).length;
      return times > script.maxLoudPerLot && `${lot} was loud ${times} times`;
    }),
    ...script.neverLoud.map(
      (lot) =>
        loud.some(({ names, wanting }) => names.includes(lot) && (wanting.length === 0 || wanting.includes(lot))) &&
        `${lot} was loud`,
    ),
    ...questionsWrong(script, shown),
    ...saturday.browser.faults.map(String),
  ].filter((words) => words !== false);
  const inTime = script.lastCalls.length - missed.length;
  return { script, notices: shown.length, loud: loud.length, mostInAnHour, inTime, missed, wrong, shown };
}

const isLoud = ({ notice }: Shown): boolean => notice.loudness === 'loud';

function isCalled(call: WrittenSaturday['lastCalls'][number], { shown, answered }: Saturday): boolean {
  const [from, until] = [Date.parse(call.notBefore), Date.parse(call.notAfter)];
  const number = formatMoney(dollars(call.stopAt));
  const named = shown.filter(
    ({ at, names, notice }) =>
      at <= until && names.includes(call.lot) && `${notice.title} ${notice.body}`.includes(number),
  );
  const before = (answered.get(call.lot) ?? Number.POSITIVE_INFINITY) < until;
  return before ? named.length > 0 : named.some((one) => one.at >= from && isLoud(one));
}

function questionsWrong({ questions }: WrittenSaturday, shown: readonly Shown[]): (string | false)[] {
  const asked = shown.filter(({ notice }) => /how did/i.test(notice.title));
  const [from, until] = [Date.parse(questions.noneFrom), Date.parse(questions.noneUntil)];
  const early = asked.filter(({ at }) => at >= from && at < until).length;
  const after = asked.filter(({ at }) => at >= until);
  const first = after[0]?.at ?? Number.POSITIVE_INFINITY;
  return [
    early > 0 && `${early} questions in the busy hours`,
    after.length > questions.gatheredIntoAtMost && `${after.length} questions after them`,
    first > Date.parse(questions.notLaterThan) && 'the question came too late, or not at all',
  ];
}

/** The most that appeared within sixty minutes. */
function most(shown: readonly Shown[]): number {
  return Math.max(0, ...shown.map(({ at }) => shown.filter((one) => one.at >= at && one.at < at + HOUR).length));
}
