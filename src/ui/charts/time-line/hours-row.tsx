import type { HourLabel } from './hour-labels.ts';

/** The hours along a day, which the marks' own words say as well. */
export function HoursRow({ labels }: { labels: readonly HourLabel[] }) {
  return (
    <div class="time-hours" aria-hidden="true">
      {labels.map(({ left, words }) => (
        <span key={left} style={{ left: `${left}%` }}>
          {words}
        </span>
      ))}
    </div>
  );
}
