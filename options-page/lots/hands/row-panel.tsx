import { useEffect, useRef } from 'preact/hooks';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { Pending } from '../../../src/ui/ask/use-asked-act.ts';
import type { RowAct } from '../../../src/views/lots/row-act.ts';
import type { LotWorks } from '../../../src/views/lots/standing.ts';
import { BidInRow } from './bid-in-row.tsx';
import { EndInRow } from './end-in-row.tsx';
import { RetailInRow, VenueInRow } from './fact-in-row.tsx';
import './row-panel.css';

export interface RowPanelProps {
  readonly lot: LotState;
  readonly name: string;
  readonly act: RowAct;
  readonly works: LotWorks;
  /** What has to be answered already, of one press in the row. */
  readonly start?: Pending | undefined;
  /** `saved` when a figure was typed: the next lot may lack the same one. */
  readonly onClose: (saved?: 'saved') => void;
}

/** What can be done about one lot without leaving the list. It takes the focus, and Escape closes it. */
export function RowPanel(props: RowPanelProps) {
  const { lot, name, act, onClose } = props;
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    panel.current?.querySelector<HTMLElement>('input, select, button')?.focus();
  }, []);
  return (
    <section
      ref={panel}
      class="row-panel"
      aria-label={name}
      onKeyDown={(event) => {
        // By then the panel may be gone and the keyboard on the row: the same press must not open that.
        if (event.key === 'Enter' && event.target instanceof HTMLInputElement) event.preventDefault();
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onClose();
      }}
    >
      {act === 'bid' && <BidInRow {...props} />}
      {act === 'end' && <EndInRow {...props} />}
      {act === 'venue' && <VenueInRow {...props} />}
      {act === 'retail' && <RetailInRow {...props} />}
      <div class="row small">
        <a href={`#/lot/${lot.id}`}>Worksheet</a>
        <button type="button" class="plain" onClick={() => onClose()}>
          Close
        </button>
      </div>
    </section>
  );
}
