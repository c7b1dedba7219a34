import type { Share } from '../../src/domain/learn/scores/wilson.ts';

const NAMES = ['Lowest fifth', 'Low', 'Middle', 'High', 'Highest fifth'];

/** How many cars sold in each fifth of their forecasts: level bars where the ranges are right. */
export function FifthsPicture({ fifths }: { fifths: readonly Share[] }) {
  const most = Math.max(0.4, ...fifths.map(({ high }) => high));
  const at = (share: number) => `${(share / most) * 100}%`;
  return (
    <figure class="fifths">
      <figcaption class="small strong">Where in the forecast the cars sold (the mark is an even fifth)</figcaption>
      <ul class="plain-list">
        {fifths.map(({ share, low, high }, i) => (
          <li key={NAMES[i]}>
            <span class="small">{NAMES[i]}</span>
            <span class="fifth-track" aria-hidden="true">
              <span class="fifth-bar" style={{ width: at(share) }} />
              <span class="fifth-whisker" style={{ left: at(low), width: at(high - low) }} />
              <span class="fifth-even" style={{ left: at(0.2) }} />
            </span>
            <span class="small number">{Math.round(share * 100)}%</span>
          </li>
        ))}
      </ul>
    </figure>
  );
}
