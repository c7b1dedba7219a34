import { useState } from 'preact/hooks';
import type { DisputeStep } from '../../src/domain/dispute/dispute.ts';
import type { Cents } from '../../src/domain/money/cents.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { MomentInput } from '../../src/ui/inputs/moment-input.tsx';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';
import { FilePick } from './file-pick.tsx';
import { useKeepFiles } from './use-keep-files.ts';
import { useLatest } from './use-latest.ts';
import { WordsInput } from './words-input.tsx';

const WHATS: readonly { readonly value: DisputeStep['what']; readonly label: string }[] = [
  { value: 'talk', label: 'We talked' },
  { value: 'heard', label: 'They answered' },
  { value: 'offer', label: 'They offered' },
  { value: 'told', label: 'Claim filed' },
  { value: 'answered', label: 'We answered' },
  { value: 'note', label: 'A note' },
];

/** Writes down what was said or done, with papers and pictures. */
export function StepForm({ shown: { lot, dispute } }: { shown: ShownDispute }) {
  const { setup } = useWorkspace();
  const { note } = useAfterVerbs();
  const keepFiles = useKeepFiles(lot);
  const [what, setWhat] = useState<DisputeStep['what']>('talk');
  const [at, setAt] = useState<Instant>();
  const [who, setWho] = useState<string>();
  const [words, setWords] = useState('');
  const [cents, setCents] = useState<Cents>();
  const [files, setFiles] = useState<readonly File[]>([]);
  const [fault, setFault] = useState<string>();
  const latest = useLatest({ what, at, who, words, cents, files });
  const keep = async () => {
    const { what, at, who, words, cents, files } = await latest();
    if (words.trim() === '' && files.length === 0 && cents === undefined)
      return setFault('Enter what was said or done, or attach a file.');
    setFault(undefined);
    const hashes = await keepFiles(files);
    if (hashes === null) return;
    const step: DisputeStep = {
      what,
      at: at ?? instant(Date.now()),
      ...(who !== undefined && { who }),
      ...(words.trim() !== '' && { words: words.trim() }),
      ...(cents !== undefined && { cents }),
      ...(hashes.length > 0 && { files: hashes }),
    };
    const entry = await note(lot, { kind: 'dispute-stepped', dispute: dispute.entry, step });
    if (entry === null) return;
    setWords('');
    setWho(undefined);
    setCents(undefined);
    setAt(undefined);
    setFiles([]);
  };
  return (
    <section class="panel stack">
      <h2>Add to the record</h2>
      <div class="fields">
        <ChoiceInput
          label="What"
          value={what}
          choices={WHATS}
          onCommit={(chosen) => setWhat(WHATS.find(({ value }) => value === chosen)?.value ?? what)}
        />
        <MomentInput label="When" value={at} zone={setup.store.zone} onChange={setAt} hint="Leave blank for now" />
        <TextInput
          label="With whom"
          value={who}
          longest={120}
          placeholder="the venue’s claims desk"
          onCommit={setWho}
        />
        <MoneyInput label="Amount" value={cents} onCommit={setCents} hint="Of an offer" />
      </div>
      <WordsInput label="Notes" value={words} longest={4000} onChange={setWords} rows={3} />
      <div class="row">
        <FilePick
          label="Attach papers or pictures"
          words="Attach files"
          onPick={(more) => setFiles([...files, ...more])}
        />
        {files.length > 0 && (
          <span class="small">
            {files.map(({ name }) => name).join(', ')}{' '}
            <button type="button" class="plain" onClick={() => setFiles([])}>
              Remove files
            </button>
          </span>
        )}
      </div>
      {fault && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      <p>
        <button type="button" class="main" onClick={keep}>
          Add
        </button>
      </p>
    </section>
  );
}
