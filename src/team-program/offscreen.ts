import { sendToBackground } from '../browser/messaging.ts';
import { loadTeamProgram } from '../browser/team-program.ts';
import { askBackground } from '../messages/ask-background.ts';
import type * as Program from './program.ts';

/**
 * What runs in the page without a window that Chromium's background opens for it, since a worker can't load a program later.
 * It closes by itself.
 */
async function run(): Promise<void> {
  const program = await loadTeamProgram<typeof Program>();
  await program.keepInStep('briefly', {
    onNews: () => askBackground(sendToBackground, 'plan-again', {}).catch(reportError),
  });
}

run()
  .catch(reportError)
  .finally(() => window.close());
