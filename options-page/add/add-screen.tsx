import { useState } from 'preact/hooks';
import { openFile } from '../../src/intake/open-file.ts';
import { openTable, type Table } from '../../src/intake/open-table.ts';
import { ChooseSource } from './choose-source.tsx';
import { importRun } from './import-run.ts';
import { Review } from './review.tsx';
import { RunState } from './run-state.tsx';
import './add.css';

type Step =
  | { readonly step: 'choose'; readonly fault?: string }
  | { readonly step: 'review'; readonly table: Table; readonly name: string; readonly from: 'file' | 'pasted' };

/** Lots in: typed by hand, pasted from a spreadsheet, or from a file. Nothing is kept before it was looked at. */
export function AddScreen() {
  const [step, setStep] = useState<Step>({ step: 'choose' });
  const run = importRun.use();
  const begin = () => {
    importRun.set({ state: 'idle' });
    setStep({ step: 'choose' });
  };

  const takeFile = async (file: File) => {
    const table = await openFile(file);
    setStep(
      table.ok
        ? { step: 'review', table: table.value, name: file.name, from: 'file' }
        : { step: 'choose', fault: `${file.name}: ${table.message}` },
    );
  };
  const takeText = (text: string) => {
    const table = openTable(text);
    setStep(
      table.ok
        ? { step: 'review', table: table.value, name: 'The pasted rows', from: 'pasted' }
        : { step: 'choose', fault: table.message },
    );
  };

  return (
    <div class="stack loose">
      <h1>Add lots</h1>
      {run.state !== 'idle' ? (
        <RunState run={run} onBack={begin} />
      ) : step.step === 'choose' ? (
        <ChooseSource fault={step.fault} onFile={takeFile} onText={takeText} />
      ) : (
        <Review table={step.table} name={step.name} from={step.from} onBack={() => setStep({ step: 'choose' })} />
      )}
    </div>
  );
}
