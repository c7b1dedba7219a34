import { useId, useMemo, useState } from 'preact/hooks';
import { type Corrections, switchedOnIn } from '../../../src/domain/correction/corrections.ts';
import { type Switches, switched } from '../../../src/domain/correction/switches.ts';
import { effectOf } from '../../../src/domain/learn/corrections/effect.ts';
import { type Finding, findingOf } from '../../../src/domain/learn/corrections/finding.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import {
  CORRECTION_TEXTS,
  casesWords,
  movedWords,
  sureWords,
} from '../../../src/views/learn/corrections/correction-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { EffectPart } from './effect-part.tsx';
import { FiguresList } from './figures-list.tsx';
import { ReplayPart } from './replay-part.tsx';
import type { CorrectionData } from './use-correction-data.ts';
import { useSlices } from './use-slices.ts';
import { useSwitch } from './use-switch.ts';

interface CorrectionRowProps {
  readonly finding: Finding;
  readonly data: CorrectionData;
}

/** One correction: what it rests on, what it would do, and its switch. */
export function CorrectionRow({ finding, data }: CorrectionRowProps) {
  const { setup } = useWorkspace();
  const [open, setOpen] = useState(false);
  const fold = useId();
  const { id, enough, cases, least } = finding;
  const { title, what, record } = CORRECTION_TEXTS[id];
  const on = setup.corrections?.[id];
  const moved = on && movedWords(finding, setup.corrections ?? {});
  return (
    <li class={`panel stack correction${open ? ' correction-open' : ''}`} aria-labelledby={`${fold}-title`}>
      <div class="row apart">
        <h2 class="correction-title" id={`${fold}-title`}>
          <TermLink term={id === 'win' ? 'won-cars' : 'own-results'}>{title}</TermLink>
        </h2>
        <span class={on ? 'act' : 'quiet'}>
          {on ? `On since ${dateInWords(dateIn(setup.store.zone, on.since))}` : 'Off'}
        </span>
      </div>
      <p>{what}</p>
      {enough ? (
        <>
          <p class="small">
            From {casesWords(id, cases)}. {sureWords(finding)}
          </p>
          <FiguresList finding={finding} />
        </>
      ) : (
        <p class="note">
          Not enough yet: {cases} of {casesWords(id, least)}. {record}
        </p>
      )}
      {moved !== undefined && <p class="note">{moved} Max bids still go by the old value.</p>}
      {(enough || on !== undefined) && (
        <p>
          <button type="button" aria-expanded={open} aria-controls={fold} onClick={() => setOpen(!open)}>
            {open ? 'Close' : on ? 'Look at the switch' : 'See what it does'}
          </button>
        </p>
      )}
      <div id={fold} hidden={!open}>
        {open && <Switching finding={finding} data={data} />}
      </div>
    </li>
  );
}

/** The effect of the switch, then the switch: nobody is asked to decide before he has seen what it does. */
function Switching({ finding, data }: CorrectionRowProps) {
  const { setup } = useWorkspace();
  const { id, enough, value } = finding;
  const on = setup.corrections?.[id] !== undefined;
  const flip = useSwitch();
  const renewed = on && enough && movedWords(finding, setup.corrections ?? {}) !== undefined;
  const set = useMemo(
    () => withWinLearnedAgain(id, on && !renewed ? { [id]: null } : value, setup.corrections, data, setup),
    [id, on, renewed, value, setup, data],
  );
  const begin = useMemo(
    () => () =>
      effectOf(
        data.open,
        pricingContext(setup),
        pricingContext({ ...setup, corrections: switched(setup.corrections, set) }),
      ),
    [data, setup, set],
  );
  const { result, done, failed } = useSlices(begin);
  const { title } = CORRECTION_TEXTS[id];
  return (
    <div class="stack loose">
      <section class="stack" aria-label="Effect">
        <h3>
          {on && !renewed ? 'If you switch it off' : renewed ? 'If you take the new value' : 'If you switch it on'}
        </h3>
        {result === null ? (
          <p role="status">{failed ?? `Working out ${data.open.length} open lots: ${done} done.`}</p>
        ) : (
          <EffectPart effect={result} />
        )}
        {set.win !== undefined && id !== 'win' && (
          <p class="quiet small">“Cars that you win” is learned again with it, so that nothing is taken off twice.</p>
        )}
      </section>
      <ReplayPart id={id} data={data} />
      <p class="row">
        {(!on || renewed) && (
          <button
            type="button"
            class="main"
            disabled={result === null || !enough}
            onClick={() => flip(set, `${title}: on.`)}
          >
            {renewed ? 'Take the new value' : 'Switch on'}
          </button>
        )}
        {on && (
          <button
            type="button"
            onClick={() =>
              flip(withWinLearnedAgain(id, { [id]: null }, setup.corrections, data, setup), `${title}: off.`)
            }
          >
            Switch off
          </button>
        )}
      </p>
    </div>
  );
}

/** What won cars miss is what the other corrections leave over: when one of those is switched, it is learned again, in the same entry. */
function withWinLearnedAgain(
  id: Finding['id'],
  set: Switches,
  before: Corrections | undefined,
  { evidence, now }: CorrectionData,
  setup: ReturnType<typeof useWorkspace>['setup'],
): Switches {
  if (id === 'win' || !switchedOnIn(before).includes('win')) return set;
  const { enough, value } = findingOf('win', {
    evidence,
    setup: { ...setup, corrections: switched(before, set) },
    now,
  });
  return enough ? { ...set, ...value } : set;
}
