import type { Need } from '../../src/domain/week/closing-need.ts';

const ENTRIES: readonly { readonly need: Need; readonly words: string }[] = [
  { need: 'danger', words: 'in busy hours: no proxy yet, outbid or over max' },
  // These four look alike: each wants a hand, and the mark's own words say which.
  { need: 'bare', words: 'no proxy yet, outbid, over max or to check' },
  { need: 'placed', words: 'proxy placed' },
  { need: 'past-stop', words: 'price over max' },
  { need: 'unsaid', words: 'closed, no result yet' },
  { need: 'over', words: 'closed' },
];

/** How to read the line. */
export function Legend() {
  return (
    <ul class="week-legend small">
      {ENTRIES.map(({ need, words }) => (
        <li key={need}>
          <span class={`time-mark ${need}`} aria-hidden="true">
            2:05
          </span>
          {words}
        </li>
      ))}
      <li>
        <span class="week-hatch" aria-hidden="true" /> your busy hours
      </li>
      <li>
        <span class="week-bracket" aria-hidden="true" /> 2× too close together for one person
      </li>
      <li>
        <span class="week-tick" aria-hidden="true" /> a reminder
      </li>
    </ul>
  );
}
