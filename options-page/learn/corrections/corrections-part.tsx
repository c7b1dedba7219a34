import { useMemo, useRef } from 'preact/hooks';
import { HALF_LIFE_DAYS } from '../../../src/domain/learn/corrections/forgetting.ts';
import { Contained } from '../../../src/ui/contained.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { SHOWN_ORDER } from '../../../src/views/learn/corrections/correction-words.ts';
import { CorrectionRow } from './correction-row.tsx';
import { findingsOf, useCorrectionData } from './use-correction-data.ts';
import { useSlices } from './use-slices.ts';
import { useSwitch } from './use-switch.ts';
import './corrections.css';

/** What the dealer's own results can correct in the next max bids, each with a switch of its own. */
export function CorrectionsPart() {
  const { setup } = useWorkspace();
  const read = useCorrectionData();
  // While it is read anew the rows stay: whoever just switched one keeps his place.
  const data = useLast(read.result);
  const begin = useMemo(() => (data === null ? null : () => findingsOf(SHOWN_ORDER, data, setup)), [data, setup]);
  const found = useSlices(begin);
  const findings = useLast(found.result);
  const flip = useSwitch();
  return (
    <section class="stack loose corrections" aria-label="Corrections">
      <div class="stack">
        <h1>Corrections</h1>
        <p class="correction-prose">
          What your own results say about your estimates. Each one is off until you switch it on, and keeps the value
          that it had then: a max bid never moves by itself. The worksheet shows each as a line of its own.
        </p>
        <p class="quiet small correction-prose">
          Ranges hold the truth in 19 of 20 cases, as long as the next cars are like the last. Few cases lean on a{' '}
          <TermLink term="starting-assumption">starting assumption</TermLink> and old ones{' '}
          <TermLink term="case-half-life">count for less</TermLink> than new ones. Estimates can be wrong, and money can
          be lost.
        </p>
      </div>
      <div class="fields correction-forgetting">
        <NumberInput
          label="A case counts for half after"
          value={setup.corrections?.halfLifeDays ?? HALF_LIFE_DAYS}
          least={30}
          most={3650}
          unit="days"
          required
          onCommit={(days) =>
            days !== undefined &&
            flip({ halfLifeDays: days === HALF_LIFE_DAYS ? null : days }, `A case counts for half after ${days} days.`)
          }
        />
      </div>
      {findings === null ? (
        <p role="status">{read.failed ?? found.failed ?? `Looking through your past lots: ${read.done} done.`}</p>
      ) : (
        data !== null && (
          <ul class="correction-list correction-rows">
            {findings.map((finding) => (
              <Contained key={finding.id} what="This correction" of={finding}>
                <CorrectionRow finding={finding} data={data} />
              </Contained>
            ))}
          </ul>
        )
      )}
    </section>
  );
}

/** The last answer that there was. */
function useLast<Answer>(answer: Answer | null): Answer | null {
  const last = useRef<Answer | null>(null);
  if (answer !== null) last.current = answer;
  return last.current;
}
