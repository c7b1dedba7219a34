import browser from 'webextension-polyfill';

/** What Chromium has for it, and the typings of both browsers do not know. */
interface WithOffscreen {
  readonly offscreen?: {
    createDocument(wanted: { url: string; reasons: readonly string[]; justification: string }): Promise<void>;
  };
}

/** What the background asks of the program. */
interface KeepsInStep {
  keepInStep(how: 'briefly', more: { readonly onNews: () => void }): Promise<void>;
}

const PAGE = 'team/team.html';
/** The address of that program in the package, written in by the build, which leaves the import itself to the browser. */
declare const TEAM_PROGRAM: string;

/** Loads the program that talks to the team's server: a file of its own, which nobody loads without a team. */
export function loadTeamProgram<Program>(): Promise<Program> {
  return import(TEAM_PROGRAM);
}

/**
 * Lets that program run while no page of ours may be open. A background that is a page loads it itself; a worker can't load
 * anything later, and opens a page without a window for it. Safe to call at any time.
 * @param onNews told when something came in. That page tells it by a message of its own.
 */
export async function runTeamProgram(onNews: () => void): Promise<void> {
  if (typeof document !== 'undefined') {
    const program = await loadTeamProgram<KeepsInStep>();
    return program.keepInStep('briefly', { onNews });
  }
  const { offscreen } = (globalThis as { readonly chrome?: WithOffscreen }).chrome ?? {};
  if (offscreen === undefined) return;
  const open = await browser.runtime.getContexts({ documentUrls: [browser.runtime.getURL(PAGE)] });
  // The one that is open sees by itself what is written.
  if (open.length > 0) return;
  await offscreen.createDocument({
    url: PAGE,
    reasons: ['WORKERS'],
    justification: 'Sends and fetches for the team that the user has joined, to the address that he typed.',
  });
}
