/** The few timers that waiting needs, so that a test can hold them. */
export interface Timers {
  readonly setTimeout: (call: () => void, ms: number) => number;
  readonly clearTimeout: (timer: number) => void;
}

export interface QuietRules {
  /** How long nothing may have been added or changed. */
  readonly quietMs: number;
  /** When to stop waiting in any case. */
  readonly limitMs: number;
}

export const QUIET_RULES: QuietRules = { quietMs: 400, limitMs: 5000 };

/**
 * Waits until a page that builds itself late has come to rest: no element added or removed and no text replaced for
 * `quietMs`, loaded, and nothing marked busy. Answers `quiet`, or `still-changing` when the limit came first. Text that
 * ticks in place, such as a countdown, does not count as change.
 */
export function waitUntilQuiet(
  document: Document,
  timers: Timers,
  rules: QuietRules = QUIET_RULES,
): Promise<'quiet' | 'still-changing'> {
  const Observer = document.defaultView?.MutationObserver;
  if (Observer === undefined) return Promise.resolve('quiet');
  return new Promise((resolve) => {
    const finish = (answer: 'quiet' | 'still-changing') => {
      observer.disconnect();
      timers.clearTimeout(quiet);
      timers.clearTimeout(limit);
      resolve(answer);
    };
    const onQuiet = () => {
      if (isBusy(document)) quiet = timers.setTimeout(onQuiet, rules.quietMs);
      else finish('quiet');
    };
    const observer = new Observer((changes) => {
      if (!changes.some(addsOrRemoves)) return;
      timers.clearTimeout(quiet);
      quiet = timers.setTimeout(onQuiet, rules.quietMs);
    });
    observer.observe(document, { subtree: true, childList: true });
    let quiet = timers.setTimeout(onQuiet, rules.quietMs);
    const limit = timers.setTimeout(() => finish('still-changing'), rules.limitMs);
  });
}

/** A script that sets a clock's text replaces one text by another; building a page adds elements. */
function addsOrRemoves(change: MutationRecord): boolean {
  const nodes = [...change.addedNodes, ...change.removedNodes];
  return nodes.some((node) => node.nodeType !== 3) || change.addedNodes.length !== change.removedNodes.length;
}

function isBusy(document: Document): boolean {
  return document.readyState === 'loading' || document.querySelector('[aria-busy="true"]') !== null;
}
