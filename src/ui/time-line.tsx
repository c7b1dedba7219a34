import type { Instant } from '../domain/time/instant.ts';
import { clusterMarks } from './cluster-marks.ts';
import { useWidth } from './use-width.ts';
import './time-line.css';

export interface TimeMark {
  readonly id: string;
  readonly at: Instant;
  /** The time as the store's clock shows it. */
  readonly time: string;
  readonly label: string;
  readonly href: string;
  /** Something is still to be done before it closes. */
  readonly open: boolean;
}

export interface TimeBand {
  readonly from: Instant;
  readonly to: Instant;
  readonly label: string;
}

export interface TimeRow {
  readonly key: string;
  readonly label: string;
  readonly from: Instant;
  readonly to: Instant;
  readonly bands: readonly TimeBand[];
  readonly marks: readonly TimeMark[];
}

export interface TimeLineProps {
  readonly rows: readonly TimeRow[];
  readonly now: Instant;
  /** Hours to name along the top, as instants within any row's day mapped to a fraction of the row. */
  readonly hours: readonly { readonly at: number; readonly label: string }[];
  /** Closings nearer together than this can't be watched one by one. */
  readonly reactionMs: number;
}

/** A mark needs room for a fingertip; nearer ones share one and say how many they are. */
const MARK_WIDTH = 30;

/** Time as a place: a row a day in store time, rush as hatching, closings as marks, now as a rule. */
export function TimeLine({ rows, now, hours, reactionMs }: TimeLineProps) {
  const [ref, width] = useWidth<HTMLDivElement>(900);
  const track = Math.max(200, width - (width < 560 ? 0 : 120));
  return (
    <div class="time-line" ref={ref}>
      <div class="time-hours" aria-hidden="true">
        {hours.map((hour) => (
          <span key={hour.at} style={{ left: `${hour.at * 100}%` }}>
            {hour.label}
          </span>
        ))}
      </div>
      <ol class="time-rows">
        {rows.map((row) => (
          <Row key={row.key} row={row} now={now} track={track} hours={hours} reactionMs={reactionMs} />
        ))}
      </ol>
    </div>
  );
}

function Row(props: { row: TimeRow; now: Instant; track: number; hours: TimeLineProps['hours']; reactionMs: number }) {
  const { row, now, track, hours, reactionMs } = props;
  const span = row.to - row.from;
  const at = (instant: number) => Math.min(1, Math.max(0, (instant - row.from) / span));
  const clusters = clusterMarks(row.marks, (MARK_WIDTH / track) * span, reactionMs);
  return (
    <li class={now >= row.from && now < row.to ? 'time-row today' : 'time-row'}>
      <h3 class="time-day">
        {row.label}
        {row.marks.length > 0 && <span class="quiet small"> {row.marks.length} close</span>}
      </h3>
      <div class="time-track">
        {hours.map((hour) => (
          <span key={hour.at} class="time-hour" style={{ left: `${hour.at * 100}%` }} aria-hidden="true" />
        ))}
        {row.bands.map((band) => (
          <span
            key={band.from}
            class="time-band"
            style={{ left: `${at(band.from) * 100}%`, width: `${(at(band.to) - at(band.from)) * 100}%` }}
          >
            <span class="visually-hidden">{band.label}</span>
          </span>
        ))}
        {now >= row.from && now < row.to && (
          <span class="time-now" style={{ left: `${at(now) * 100}%` }}>
            <span class="visually-hidden">It is now here.</span>
          </span>
        )}
        {clusters.map((cluster) => {
          const first = cluster.marks[0];
          if (first === undefined) return null;
          const place = { left: `${at(cluster.middle) * 100}%` };
          const open = cluster.marks.some((mark) => mark.open);
          if (cluster.marks.length === 1) {
            return (
              <a
                key={first.id}
                class={open ? 'time-mark open' : 'time-mark'}
                style={place}
                href={first.href}
                title={`${first.time} ${first.label}`}
              >
                <span class="visually-hidden">
                  {first.time} {first.label}
                </span>
              </a>
            );
          }
          return (
            <details key={first.id} class="time-cluster" style={place}>
              <summary class={[open && 'open', cluster.collides && 'collides'].filter(Boolean).join(' ')}>
                {cluster.marks.length}
                <span class="visually-hidden">
                  {' '}
                  lots close from {first.time}
                  {cluster.collides ? ', too near together to watch one by one' : ''}
                </span>
              </summary>
              <ul>
                {cluster.marks.map((mark) => (
                  <li key={mark.id}>
                    <a href={mark.href}>
                      {mark.time} {mark.label}
                    </a>
                  </li>
                ))}
              </ul>
            </details>
          );
        })}
      </div>
    </li>
  );
}
