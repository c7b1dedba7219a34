import { useEffect, useState } from 'preact/hooks';
import { nextWake } from '../../../src/browser/alarms.ts';
import { sendToBackground } from '../../../src/browser/messaging.ts';
import { noticesAllowed, noticesHaveButtons, noticesStay } from '../../../src/browser/notifications.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { askBackground } from '../../../src/messages/ask-background.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { timeWords } from '../../../src/views/words/call-words.ts';
import { type Abilities, abilityLines, trialWords } from './ability-words.ts';

type Trial = 'taken' | 'not-taken' | 'seen' | 'not-seen' | { readonly fault: string };

/** What this browser will do and will not do when a call is due, asked of the browser itself; and a call to try it. */
export function ThisBrowser() {
  const { setup } = useWorkspace();
  const [abilities, setAbilities] = useState<Abilities>();
  const [trial, setTrial] = useState<Trial>();
  useEffect(() => {
    askBrowser().then(setAbilities, (error: unknown) => setTrial({ fault: String(error) }));
  }, []);

  const tryIt = async () => {
    const { taken } = await askBackground(sendToBackground, 'try-notice', {});
    setAbilities(await askBrowser());
    setTrial(taken ? 'taken' : 'not-taken');
  };
  const next = abilities?.next;
  return (
    <fieldset class="stack">
      <legend>This browser</legend>
      {abilities && (
        <ul class="setup-prose">
          {abilityLines(abilities).map((line) => (
            <li key={line}>{line}</li>
          ))}
          <li>
            {next === undefined
              ? 'No reminder is planned.'
              : `The next reminder is planned for ${timeWords(instant(next), setup.store.zone, instant(Date.now()))}.`}
          </li>
        </ul>
      )}
      <div class="row">
        <button type="button" onClick={() => tryIt().catch((error: unknown) => setTrial({ fault: String(error) }))}>
          Show me a reminder now
        </button>
        {trial === 'taken' && (
          <>
            <button type="button" onClick={() => setTrial('seen')}>
              I saw it
            </button>
            <button type="button" onClick={() => setTrial('not-seen')}>
              Nothing appeared
            </button>
          </>
        )}
      </div>
      <p role="status" class={trial === undefined ? '' : 'note setup-prose'}>
        {trial !== undefined && (typeof trial === 'string' ? trialWords(trial) : `That did not work: ${trial.fault}`)}
      </p>
    </fieldset>
  );
}

async function askBrowser(): Promise<Abilities> {
  return {
    allowed: await noticesAllowed(),
    buttons: noticesHaveButtons(),
    stays: noticesStay(),
    next: await nextWake('next-alert'),
  };
}
