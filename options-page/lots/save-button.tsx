import { useState } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { saveFile } from '../../src/ui/save-file.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { LotWorks } from '../../src/views/lots/standing.ts';
import { countWords } from '../../src/views/words/count-words.ts';

interface SaveButtonProps {
  readonly lots: readonly LotState[];
  readonly works: LotWorks;
}

/** Saves the lots that are shown, in their order, as a file for a spreadsheet. */
export function SaveButton({ lots, works }: SaveButtonProps) {
  const { setup, planned, say } = useWorkspace();
  const [written, setWritten] = useState<number>();
  const save = async () => {
    setWritten(0);
    try {
      // What writes it is only read when it is asked for.
      const { listAsCsv } = await import('./list-as-csv.ts');
      const now = instant(Date.now());
      const file = await listAsCsv({ lots, setup, works, now, withPlan: planned.size > 0 }, setWritten);
      saveFile(file, `lots-${new Date(now).toISOString().slice(0, 10)}.csv`);
      say(
        `${countWords(lots.length, 'lot', 'lots')} saved to your downloads. You can add the file again under Add lots.`,
      );
    } catch (error) {
      say(`The file could not be saved: ${error instanceof Error ? error.message : String(error)}`);
    } finally {
      setWritten(undefined);
    }
  };
  return (
    <button
      type="button"
      disabled={lots.length === 0 || written !== undefined}
      title="The lots shown, as a CSV file for a spreadsheet"
      onClick={save}
    >
      {written === undefined ? 'Save as CSV' : `Writing… ${written.toLocaleString('en-US')}`}
    </button>
  );
}
