import { instant } from '../../../src/domain/time/instant.ts';
import { wallClock } from '../../../src/domain/time/wall-clock.ts';
import { examineVin } from '../../../src/domain/vin/examine-vin.ts';
import { readVin } from '../../../src/domain/vin/read-vin.ts';
import { vinSchema } from '../../../src/domain/vin/vin.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import type { LotEdit } from '../use-lot-edit.ts';

/** The VIN, with whatever speaks against it; a repair is offered, never made. */
export function VinInput({ lot, edit }: { lot: LotState; edit: LotEdit }) {
  const { setup } = useWorkspace();
  const { vin: text, year } = lot.facts;
  const vin = vinSchema.safeParse(text);
  const thisYear = Number(wallClock(instant(Date.now()), setup.store.zone).date.slice(0, 4));
  const report = vin.success ? examineVin(vin.data, { year, thisYear }) : null;
  return (
    <div class="stack wide">
      <TextInput
        label="VIN"
        value={text}
        longest={40}
        read={readVin}
        hint={report === null ? '17 characters' : vinWords(report)}
        onCommit={(value) => edit.commit('vin', value, 'VIN saved.')}
      />
      {report !== null && report.doubts.length > 0 && (
        <div class="note warning stack">
          {report.doubts.map((doubt) => (
            <p key={doubt.kind}>{doubt.message}</p>
          ))}
          {report.repairs.length > 0 && (
            <details>
              <summary>Valid VINs one typo away</summary>
              <ul class="plain-list">
                {report.repairs.slice(0, 8).map((repair) => (
                  <li key={repair.vin}>
                    <button type="button" class="plain" onClick={() => edit.commit('vin', repair.vin, 'VIN changed.')}>
                      {repair.vin}
                    </button>{' '}
                    <span class="quiet small">{repair.change}</span>
                  </li>
                ))}
              </ul>
            </details>
          )}
        </div>
      )}
    </div>
  );
}

function vinWords({ year, maker, doubts }: ReturnType<typeof examineVin>): string {
  const years = year.candidates.length === 0 ? '' : `, model year ${year.candidates.join(' or ')}`;
  return `${doubts.some(({ kind }) => kind === 'check-digit') ? 'Check digit is wrong' : 'Check digit agrees'}; made in: ${maker.origin}${years}`;
}
