import { lotName } from '../../src/domain/lot/car-name.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { listMemory } from '../place/list-memory.ts';

/** From one lot to the next as the list last showed them, and back to the list, which stands as it was left. */
export function LotSteps({ id }: { id: LotId }) {
  const { shown } = listMemory;
  const at = shown.findIndex((lot) => lot.id === id);
  const step = (lot: (typeof shown)[number] | undefined, words: string) =>
    lot === undefined ? (
      <span class="quiet">{words}</span>
    ) : (
      <a href={`#/lot/${lot.id}`} aria-label={`${words}: ${lotName(lot.facts)}`}>
        {words}
      </a>
    );
  return (
    <nav class="lot-steps row small no-print" aria-label="Lots in the list">
      <a href="#/lots">Back to the lots</a>
      {at !== -1 && (
        <>
          {step(shown[at - 1], 'Previous lot')}
          {step(shown[at + 1], 'Next lot')}
          <span class="quiet">
            {(at + 1).toLocaleString('en-US')} of {shown.length.toLocaleString('en-US')}
          </span>
        </>
      )}
    </nav>
  );
}
