import { useId } from 'preact/hooks';
import { type CountMark, countsTogether, type ScreenCounts } from '../../src/views/counts/screen-counts.ts';
import type { PlaceGroup } from './places.ts';
import type { ScreenName } from './screens.ts';
import { useMenu } from './use-menu.ts';

interface PlacesOfProps {
  readonly group: PlaceGroup;
  readonly screen: ScreenName;
  readonly counts: ScreenCounts;
}

/** The places of one group: side by side where all groups fit in a line, otherwise in a menu under the group's word. */
export function PlacesOf({ group: { name, short, places }, screen, counts }: PlacesOfProps) {
  const id = useId();
  const { root, open, turn, close } = useMenu();
  const here = places.some(({ screens }) => screens.includes(screen));
  const waiting = places.flatMap(({ counts: whose }) => (whose && counts[whose]) ?? []);
  return (
    <div ref={root} role="group" aria-label={name} class={open ? 'frame-group opened' : 'frame-group'}>
      <button
        type="button"
        class={here ? 'frame-opener here' : 'frame-opener'}
        aria-expanded={open}
        aria-controls={id}
        onClick={turn}
      >
        {short}
        <Count mark={countsTogether(waiting)} />
        {here && <span class="visually-hidden">, you are here</span>}
      </button>
      <div id={id} class="frame-places">
        {places.map(({ hash, label, screens, counts: whose }) => (
          <a key={hash} href={hash} aria-current={screens.includes(screen) ? 'page' : undefined} onClick={close}>
            {label}
            {whose !== undefined && <Count mark={counts[whose]} />}
          </a>
        ))}
      </div>
    </div>
  );
}

/** Stands in the link's own margin, so that nothing moves when it comes. */
function Count({ mark }: { mark: CountMark | undefined }) {
  if (mark === undefined) return null;
  return (
    <>
      <span class={mark.presses ? 'frame-count presses' : 'frame-count'} aria-hidden="true">
        {mark.figure}
      </span>
      <span class="visually-hidden">, {mark.words}</span>
    </>
  );
}
