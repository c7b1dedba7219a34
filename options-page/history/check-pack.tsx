import { useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { NOTHING_NOTED, type Noted } from '../../src/journal/noted.ts';
import { NOT_SHOWN, sayProved } from '../../src/journal/pack/say-pack-check.ts';
import { type PackCheck, verifyPack } from '../../src/journal/pack/verify-pack.ts';
import { NotedInput } from '../../src/ui/inputs/noted-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { packMoments } from '../../src/views/history/pack-moments.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { PackedFigure } from './packed-figure.tsx';

interface Answer {
  readonly name: string;
  readonly check?: PackCheck;
  readonly fault?: string;
}

/** The check of a pack that came back, against what was noted where there is something; and what its data say. */
export function CheckPack() {
  const { store } = useWorkspace();
  const [noted, setNoted] = useState<Noted>();
  const [answer, setAnswer] = useState<Answer>();
  const look = async (file: File) => {
    const { heads, keys } = noted ?? NOTHING_NOTED;
    const known = await store.knownKeys();
    const checked = await verifyPack(await file.text(), { heads, keys: [...keys, ...known] });
    setAnswer(checked.ok ? { name: file.name, check: checked.value } : { name: file.name, fault: checked.message });
  };
  return (
    <>
      <h3>Check an evidence pack</h3>
      <NotedInput value={noted} onCommit={setNoted} />
      <label class="field">
        <span class="label">Choose a pack</span>
        <input
          type="file"
          accept=".html,.htm"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) look(file).catch((error: unknown) => setAnswer({ name: file.name, fault: String(error) }));
          }}
        />
      </label>
      {answer !== undefined && <Verdict answer={answer} />}
      {answer?.check !== undefined && <Account check={answer.check} />}
    </>
  );
}

function Verdict({ answer: { name, check, fault } }: { answer: Answer }) {
  if (check === undefined)
    return (
      <div role="status" class="note warning">
        <p>
          {name} was not taken. {fault}
        </p>
      </div>
    );
  const { findings, told } = check;
  return (
    <div role="status" class={findings.length > 0 ? 'note warning stack' : 'note stack'}>
      {findings.length > 0 ? (
        <Sentences
          title={`${name}: ${countWords(findings.length, 'thing is', 'things are')} wrong.`}
          all={findings.slice(0, 20)}
        />
      ) : (
        <Sentences title={`${name} was checked. What the check shows:`} all={sayProved(check)} />
      )}
      {told.length > 0 && <Sentences title="What to know about it:" all={told.slice(0, 20)} />}
      {findings.length === 0 && <Sentences title="What it can’t show:" all={NOT_SHOWN} />}
    </div>
  );
}

function Sentences({ title, all }: { title: string; all: readonly string[] }) {
  return (
    <div>
      <p>{title}</p>
      <ul class="plain-list">
        {all.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}

/** Made from the data here and now: the words of the file’s own page are not used, since anyone could change and seal them anew. */
function Account({ check: { head, lines, files } }: { check: PackCheck }) {
  const { setup } = useWorkspace();
  const moments = packMoments(lines, { lot: head.lot, say: (at) => sayTime(at, setup.store.zone) });
  return (
    <details>
      <summary>What its data say (the page in the file may say something else: go by this list)</summary>
      <ol class="plain-list small">
        {moments.map(({ when, who, what, remark, hash, files: named }) => (
          <li key={hash}>
            {when}, <bdi>{who}</bdi>: <bdi>{what}</bdi>
            {remark !== undefined && <strong> ({remark})</strong>} <code>{hash.slice(0, 12)}</code>
            {named.map((one) => {
              const file = files.get(one);
              return file === undefined ? null : <PackedFigure key={one} file={file} />;
            })}
          </li>
        ))}
      </ol>
    </details>
  );
}
