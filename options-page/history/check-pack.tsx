import { useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { ChainHead } from '../../src/journal/chain-head.ts';
import { type PackCheck, verifyPack } from '../../src/journal/pack/verify-pack.ts';
import { readEntry } from '../../src/journal/read-entry.ts';
import { fromBase64 } from '../../src/store/backup/base64.ts';
import { NotedHeadInput } from '../../src/ui/inputs/noted-head-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { sayHappening } from '../../src/views/history/say-happening.ts';
import { countWords } from '../../src/views/words/count-words.ts';

interface Answer {
  readonly name: string;
  readonly check?: PackCheck;
  readonly fault?: string;
}

/** The check of a pack that came back, against a fingerprint that was noted where there is one; and what its entries say. */
export function CheckPack() {
  const [noted, setNoted] = useState<ChainHead>();
  const [answer, setAnswer] = useState<Answer>();
  const look = async (file: File) => {
    const checked = verifyPack(await file.text(), fromBase64, noted === undefined ? [] : [noted]);
    setAnswer(checked.ok ? { name: file.name, check: checked.value } : { name: file.name, fault: checked.message });
  };
  return (
    <>
      <h3>Check an evidence pack</h3>
      <NotedHeadInput value={noted} onCommit={setNoted} />
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
      {answer !== undefined && <Findings answer={answer} withNoted={noted !== undefined} />}
      {answer?.check !== undefined && <Entries check={answer.check} />}
    </>
  );
}

function Findings({ answer: { name, check, fault }, withNoted }: { answer: Answer; withNoted: boolean }) {
  const findings = check?.findings ?? [];
  const { entry = 0, held = 0, file = 0, bare = 0 } = check?.counts ?? {};
  return (
    <div role="status" class={fault !== undefined || findings.length > 0 ? 'note warning stack' : 'note'}>
      {fault !== undefined ? (
        <p>{fault}</p>
      ) : findings.length === 0 ? (
        <p>
          {name}: {countWords(entry + held, 'entry', 'entries')} and {countWords(file, 'file', 'files')} checked.
          Nothing is wrong.
          {withNoted && ' It holds the entry you noted.'}
          {bare > 0 && ` ${countWords(bare, 'early entry is', 'early entries are')} taken on trust.`}
        </p>
      ) : (
        <>
          <p>
            {name}: {countWords(findings.length, 'thing is', 'things are')} wrong.
          </p>
          <ul class="plain-list">
            {findings.slice(0, 20).map((finding) => (
              <li key={finding}>{finding}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** Whoever changes the words of a pack's page can seal it anew, so what counts is what the entries themselves say. */
function Entries({ check: { entries } }: { check: PackCheck }) {
  const { setup } = useWorkspace();
  return (
    <details>
      <summary>What the entries say. Compare it with the page, which anyone could rewrite and seal again</summary>
      <ol class="plain-list small">
        {entries.map((raw) => {
          const read = readEntry(raw);
          return (
            <li key={raw.id}>
              {sayTime(raw.at, setup.store.zone)}, {raw.author}:{' '}
              {read.as === 'known' ? sayHappening(read.entry.happening) : 'something this version can’t read'}{' '}
              <code>{raw.hash.slice(0, 12)}</code>
            </li>
          );
        })}
      </ol>
    </details>
  );
}
