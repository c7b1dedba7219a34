import { useState } from 'preact/hooks';
import { lotName } from '../../../src/domain/lot/car-name.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import type { LeftOut } from '../../../src/views/lots/do-lot-acts.ts';
import type { Standings } from '../../../src/views/lots/standing.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { LeftOutNote } from './left-out-note.tsx';
import { PlaceAtMax } from './place-at-max.tsx';
import { ReconForAll } from './recon-for-all.tsx';
import { useManyLots } from './use-many-lots.ts';
import { VenueForAll } from './venue-for-all.tsx';
import './choice-bar.css';

export interface ChoiceBarProps {
  /** Those that are chosen, the shown ones first. */
  readonly lots: readonly LotState[];
  /** How many of them the list does not show: the last ones. */
  readonly hidden: number;
  readonly standings: Standings;
  readonly onChoose: (lots: readonly LotState[]) => void;
  readonly onCompare: () => void;
  readonly onPrint: () => void;
}

/** Side by side on one screen. */
export const COMPARED = { least: 2, most: 4 } as const;

type Panel = 'place' | 'venue' | 'recon';

/** What can be done with the chosen lots at once. What the list does not show is named, so that nothing is done unseen. */
export function ChoiceBar(props: ChoiceBarProps) {
  const { lots, hidden, onChoose, onCompare, onPrint } = props;
  const { planned } = useWorkspace();
  const { drop } = useManyLots();
  const [panel, setPanel] = useState<Panel>();
  const [left, setLeft] = useState<readonly LeftOut[]>([]);
  const unseen = hidden === 0 ? [] : lots.slice(-hidden);
  const toggle = (which: Panel) => setPanel(panel === which ? undefined : which);
  const opens = (which: Panel, words: string) => (
    <button type="button" aria-expanded={panel === which} onClick={() => toggle(which)}>
      {words}
    </button>
  );
  const done = (rest: readonly LeftOut[]) => {
    setPanel(undefined);
    setLeft(rest);
    onChoose(rest.map(({ lot }) => lot));
  };
  return (
    <section class="bulk-bar no-print" aria-label="Chosen lots">
      {lots.length > 0 && (
        <>
          <div class="row">
            <span class="strong" role="status">
              {countWords(lots.length, 'lot', 'lots')} chosen
            </span>
            {opens('place', planned.size === 0 ? 'I placed these at max' : 'I placed these as planned')}
            {opens('venue', 'Set venue')}
            {opens('recon', 'Add recon')}
            <button
              type="button"
              disabled={lots.length < COMPARED.least || lots.length > COMPARED.most}
              onClick={onCompare}
            >
              Compare
            </button>
            <button type="button" onClick={onPrint}>
              Print
            </button>
            <button
              type="button"
              onClick={async () => {
                if (await drop(lots)) onChoose([]);
              }}
            >
              Stop watching
            </button>
            <button type="button" class="plain" onClick={() => onChoose([])}>
              Clear
            </button>
          </div>
          {unseen.length > 0 && (
            <p class="small bulk-unseen">
              <span class="strong">Chosen and not in the list below:</span>{' '}
              {unseen.map(({ facts }) => lotName(facts)).join(' · ')}
            </p>
          )}
          {panel === 'place' && <PlaceAtMax {...props} onDone={done} onLeave={() => setPanel(undefined)} />}
          {panel === 'venue' && <VenueForAll lots={lots} onDone={() => done([])} />}
          {panel === 'recon' && <ReconForAll lots={lots} onDone={() => done([])} />}
        </>
      )}
      <LeftOutNote left={left} onClose={() => setLeft([])} />
    </section>
  );
}
