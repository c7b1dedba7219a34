import { lotTitle } from '../domain/lot/car-name.ts';
import type { LotApart } from '../views/lots-apart.ts';

/** Names the lots that could not be worked out, so that none is missing without a word; nothing when there are none. */
export function LotsApartNote({ lots }: { lots: readonly LotApart[] }) {
  if (lots.length === 0) return null;
  return (
    <div class="note warning" role="alert">
      <p>
        {lots.length === 1 ? 'One lot is' : `${lots.length.toLocaleString('en-US')} lots are`} not counted here.
        Everything else is.
      </p>
      <ul class="plain-list">
        {lots.map(({ lot, why }) => (
          <li key={lot.id}>
            <a href={`#/${lot.dropped ? 'life' : 'lot'}/${lot.id}`}>{lotTitle(lot.facts)}</a>: {why.message}
          </li>
        ))}
      </ul>
    </div>
  );
}
