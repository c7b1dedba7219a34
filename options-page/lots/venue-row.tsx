import type { VenueLine } from '../../src/views/lots/list-lines.ts';
import { countWords } from '../../src/views/words/count-words.ts';

interface VenueRowProps {
  readonly line: VenueLine;
  readonly index: number;
  readonly top: number;
  readonly height: number;
  readonly chosen: boolean;
}

/** The head of the lots of one venue, with a box that chooses all of them. */
export function VenueRow({ line: { venue, lots }, index, top, height, chosen }: VenueRowProps) {
  const name = venue === '' ? 'Venue not set' : venue;
  return (
    <div
      class="lot-row venue-row"
      role="row"
      tabIndex={-1}
      aria-rowindex={index + 2}
      data-row={index}
      style={{ transform: `translateY(${top}px)`, height: `${height}px` }}
    >
      <div class="lot-choose" role="cell">
        <input type="checkbox" data-press="choose" aria-label={`Choose all lots of ${name}`} checked={chosen} />
      </div>
      <div class="venue-name" role="cell">
        <span class="strong">{name}</span> <span class="quiet">{countWords(lots.length, 'lot', 'lots')}</span>
      </div>
    </div>
  );
}
