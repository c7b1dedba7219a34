import { useMemo } from 'preact/hooks';
import type { RushBand } from '../../../domain/rush/rush-bands.ts';
import type { Instant } from '../../../domain/time/instant.ts';
import { greatestNeed, type Need } from '../../../domain/week/closing-need.ts';
import type { DayFrame } from '../../../domain/week/day-frame.ts';
import type { TimeMark } from '../../../views/week/time-mark.ts';
import { bracketsOf } from './brackets.ts';
import { hourLabels, placeIn } from './hour-labels.ts';
import { HoursRow } from './hours-row.tsx';
import { type Stack, stackMarks } from './mark-stacks.ts';
import type { TimeRow, TimeWords } from './time-row.ts';

interface TimeDayProps<Mark extends TimeMark> {
  readonly row: TimeRow<Mark>;
  readonly alerts: readonly Instant[];
  readonly words: TimeWords<Mark>;
  readonly now: Instant;
  /** Pixels. */
  readonly track: number;
  /** Its hours stand elsewhere than those along the top. */
  readonly ownHours: boolean;
  /** The mark that Tab reaches; undefined on paper. */
  readonly tabStop: string | undefined;
  readonly onRead: (about: readonly Mark[]) => void;
}

/** Wide enough for a fingertip and for the time in it. */
const MARK_WIDTH = 42;
const MARK_HEIGHT = 25;
/** Room over the marks for ticks and the word for the busy hours, and under them for brackets. */
const ABOVE = 26;
const BELOW = 20;
/** Of a higher pile only the count is drawn; a narrow line has fewer piles, and they may be higher. */
const HIGHEST = { wide: 4, narrow: 6 };
const NARROW = 500;
/** Percent of the day after which the word beside the rule has its room before it. */
const LATE = 85;

/** One day: its hatched busy hours, its closings, and the rule where now is. */
export function TimeDay<Mark extends TimeMark>(props: TimeDayProps<Mark>) {
  const { row, alerts, words, now, track, ownHours, tabStop, onRead } = props;
  const { frame } = row;
  const left = (at: number) => `${placeIn(frame, at)}%`;
  // Kept, because the line is drawn again every few seconds and for every mark that is read.
  const stacks = useMemo(
    () => stackMarks(row.marks, ({ at }) => (placeIn(row.frame, at) / 100) * track, MARK_WIDTH, track),
    [row, track],
  );
  const brackets = useMemo(() => bracketsOf(stacks, row.collisions, MARK_WIDTH), [stacks, row]);
  const ticks = useMemo(() => ticksOf(alerts, row.frame), [alerts, row]);
  const limit = track < NARROW ? HIGHEST.narrow : HIGHEST.wide;
  const drawn = useMemo(() => drawnOf(stacks, limit, words), [stacks, limit, words]);
  const highest = Math.max(0, ...stacks.map(({ marks }) => (marks.length > limit ? 2 : marks.length)));
  const today = now >= frame.from && now < frame.to;
  return (
    <li class={row.marks.length === 0 ? 'time-day bare' : 'time-day'}>
      {row.head !== null && <div class="time-head">{row.head}</div>}
      <div class="time-body">
        {ownHours && <HoursRow labels={hourLabels(frame, track)} />}
        <div class="time-track" style={{ minHeight: `${highest * MARK_HEIGHT + ABOVE + BELOW}px` }}>
          {frame.hours.map(({ at }) => (
            <span key={at} class="time-hour" style={{ left: left(at) }} aria-hidden="true" />
          ))}
          {row.bands.map((band) => (
            <Band key={band.from} band={band} frame={frame} track={track} />
          ))}
          {ticks.map((at) => (
            <span key={at} class="time-tick" style={{ left: `min(${at}%, 100% - 2px)` }} aria-hidden="true" />
          ))}
          {brackets.map((bracket) => (
            <span
              key={bracket.left}
              class="time-bracket"
              style={{
                left: `${(bracket.left / track) * 100}%`,
                width: `${((bracket.right - bracket.left) / track) * 100}%`,
              }}
              aria-hidden="true"
            >
              <span>{bracket.count.toLocaleString('en-US')}×</span>
            </span>
          ))}
          {today && (
            <span class={placeIn(frame, now) > LATE ? 'time-now late' : 'time-now'} style={{ left: left(now) }}>
              <span class="small">now</span>
            </span>
          )}
          <ul class="time-marks">
            {drawn.map((each) => (
              // Kept by its mark, so that the focus stays on it when the width changes and piles with it.
              <li
                key={each.mark.id}
                style={{
                  left: `${(each.left / track) * 100}%`,
                  bottom: `${BELOW + each.level * MARK_HEIGHT}px`,
                }}
              >
                <MarkLink drawn={each} tabStop={tabStop} onRead={onRead} />
              </li>
            ))}
          </ul>
        </div>
      </div>
    </li>
  );
}

function Band({ band, frame, track }: { band: RushBand; frame: DayFrame; track: number }) {
  const [from, to] = [placeIn(frame, band.from), placeIn(frame, band.to)];
  const room = ((to - from) / 100) * track;
  return (
    <span class="time-band" style={{ left: `${from}%`, width: `${to - from}%` }} aria-hidden="true">
      {room > 44 && <span class="small">{band.note !== '' && room > 120 ? band.note : 'busy'}</span>}
    </span>
  );
}

/** What is drawn of a pile: each of its marks, or one that counts them. */
interface Drawn<Mark> {
  readonly mark: Mark;
  /** All of the pile, when only its count is drawn. */
  readonly crowd: readonly Mark[] | null;
  readonly left: number;
  /** Marks that lie under it. */
  readonly level: number;
  readonly need: Need;
  /** What it is, in a sentence. */
  readonly name: string;
  readonly href: string;
}

function drawnOf<Mark extends TimeMark>(
  stacks: readonly Stack<Mark>[],
  limit: number,
  words: TimeWords<Mark>,
): readonly Drawn<Mark>[] {
  return stacks.flatMap(({ left, marks }): readonly Drawn<Mark>[] => {
    const [first] = marks;
    if (first === undefined) return [];
    if (marks.length > limit) {
      const need = greatestNeed(marks.map((each) => each.need));
      const [name, href] = [words.ofCrowd(marks), words.crowdHref(marks)];
      return [{ mark: first, crowd: marks, left, level: 0, need, name, href }];
    }
    // The first to close lies on top, as in a list.
    return marks.map((mark, i) => {
      const { need, href } = mark;
      return { mark, crowd: null, left, level: marks.length - 1 - i, need, name: words.ofMark(mark), href };
    });
  });
}

interface MarkLinkProps<Mark extends TimeMark> {
  readonly drawn: Drawn<Mark>;
  readonly tabStop: string | undefined;
  readonly onRead: (about: readonly Mark[]) => void;
}

function MarkLink<Mark extends TimeMark>({ drawn, tabStop, onRead }: MarkLinkProps<Mark>) {
  const { mark, crowd, need, name, href } = drawn;
  const about = crowd ?? [mark];
  return (
    <a
      class={crowd === null ? `time-mark ${need}` : `time-mark crowd ${need}`}
      href={href}
      data-mark={mark.id}
      tabIndex={tabStop === mark.id ? 0 : -1}
      aria-label={name}
      onFocus={() => onRead(about)}
      onMouseEnter={() => onRead(about)}
    >
      {crowd === null ? mark.label : crowd.length.toLocaleString('en-US')}
    </a>
  );
}

/** A tick a place, in percent, however many alerts come at it. */
function ticksOf(alerts: readonly Instant[], frame: DayFrame): readonly number[] {
  const within = alerts.filter((at) => at >= frame.from && at < frame.to);
  return [...new Set(within.map((at) => Math.round(placeIn(frame, at) * 2) / 2))];
}
