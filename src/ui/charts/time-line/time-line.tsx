import { useState } from 'preact/hooks';
import type { Instant } from '../../../domain/time/instant.ts';
import type { TimeMark } from '../../../views/week/time-mark.ts';
import { useWidth } from '../../hooks/use-width.ts';
import { hourLabels, sameHours } from './hour-labels.ts';
import { HoursRow } from './hours-row.tsx';
import { TimeDay } from './time-day.tsx';
import type { TimeRow, TimeWords } from './time-row.ts';
import { useMarkKeys } from './use-mark-keys.ts';
import './time-line.css';

interface TimeLineProps<Mark extends TimeMark> {
  readonly label: string;
  readonly rows: readonly TimeRow<Mark>[];
  /** When an alert is to come, in any row. */
  readonly alerts: readonly Instant[];
  readonly words: TimeWords<Mark>;
  readonly now: Instant;
  readonly onPaper: boolean;
}

/** The width of a letter sheet between its margins, in CSS pixels: on paper nothing can be measured. */
const PAPER_WIDTH = 700;
/** What stands beside the days, where there is room beside them. */
const HEAD_WIDTH = 220;
const NARROW = 640;

/**
 * Time as a place: a row a day in store time, rush hatched, closings as marks that pile up where they are near each
 * other, collisions in brackets, alerts as ticks and now as a rule. Arrow keys walk the marks, Enter opens one. It is
 * drawn a second time for paper, in the width of a sheet, unless something else is printed in its place.
 */
export function TimeLine<Mark extends TimeMark>({ label, onPaper, ...picture }: TimeLineProps<Mark>) {
  const [ref, width] = useWidth<HTMLFieldSetElement>(900);
  // Kept as what it is about and not as words: a max bid may be worked out while it stands there.
  const [read, setRead] = useState<ReadonlySet<string>>(new Set());
  const marks = picture.rows.flatMap((row) => row.marks);
  const reading = wordsOf(
    marks.filter(({ id }) => read.has(id)),
    picture.words,
  );
  const onRead = (about: readonly Mark[]) => setRead(new Set(about.map(({ id }) => id)));
  const { tabStop, listeners } = useMarkKeys(ref, (marks.find(({ at }) => at >= picture.now) ?? marks[0])?.id);
  return (
    <>
      <fieldset class="time-line no-print" ref={ref} aria-label={label} {...listeners}>
        <p class="time-reading" aria-hidden="true">
          {reading || <span class="quiet">Arrow keys move between closings; Enter or a tap opens the worksheet.</span>}
        </p>
        <Days {...picture} width={width} tabStop={tabStop} onRead={onRead} />
      </fieldset>
      {onPaper && (
        <div class="time-line on-paper">
          <Days {...picture} width={PAPER_WIDTH} tabStop={undefined} onRead={onRead} />
        </div>
      )}
    </>
  );
}

function wordsOf<Mark extends TimeMark>(about: readonly Mark[], words: TimeWords<Mark>): string {
  const [first, ...others] = about;
  if (first === undefined) return '';
  return others.length === 0 ? words.ofMark(first) : words.ofCrowd(about);
}

interface DaysProps<Mark extends TimeMark> extends Omit<TimeLineProps<Mark>, 'label' | 'onPaper'> {
  readonly width: number;
  readonly tabStop: string | undefined;
  readonly onRead: (about: readonly Mark[]) => void;
}

function Days<Mark extends TimeMark>({ rows, alerts, words, now, width, tabStop, onRead }: DaysProps<Mark>) {
  const narrow = width < NARROW;
  const heads = !narrow && rows.some(({ head }) => head !== null) ? HEAD_WIDTH : 0;
  const track = Math.max(200, width - heads);
  const plain = rows.find(({ frame }) => frame.shiftMinutes === 0) ?? rows[0];
  return (
    <div class={heads === 0 ? 'time-picture narrow' : 'time-picture'} style={{ '--head': `${heads}px` }}>
      {plain !== undefined && <HoursRow labels={hourLabels(plain.frame, track)} />}
      <ol class="time-days">
        {rows.map((row) => (
          <TimeDay
            key={row.frame.date}
            row={row}
            alerts={alerts}
            words={words}
            now={now}
            track={track}
            ownHours={plain !== undefined && !sameHours(row.frame, plain.frame)}
            tabStop={tabStop}
            onRead={onRead}
          />
        ))}
      </ol>
    </div>
  );
}
