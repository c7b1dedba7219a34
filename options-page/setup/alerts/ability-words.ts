/** What a browser can do when a call is due. */
export interface Abilities {
  /** It lets this extension show notices, as far as it says. */
  readonly allowed: boolean;
  /** It puts buttons on them. */
  readonly buttons: boolean;
  /** A loud one stays until it is answered. */
  readonly stays: boolean;
  /** When it was asked to wake us for the next call, in milliseconds since 1970. */
  readonly next: number | undefined;
}

/** What it will do and what it will not, one sentence each. */
export function abilityLines({ allowed, buttons, stays }: Abilities): string[] {
  return [
    allowed
      ? 'It shows notices.'
      : 'It shows no notices from Headroom: they are turned off in its settings. The figure on the toolbar button and the Now screen carry every call; each is shown as soon as notices are on again.',
    buttons
      ? 'A notice has two buttons that fit the moment, such as putting the call off, or that the sale added time. The Now screen has all of them.'
      : 'Notices have no buttons here. A click on one opens the lot on the Now screen, which has them all.',
    stays
      ? 'A call for a lot without a proxy stays on the screen until it is answered; a softer one goes by itself, without a sound.'
      : 'Every notice goes by itself after a few seconds here. The figure on the toolbar button stays.',
    'It wakes Headroom every two minutes and for each call, also after its background was put to sleep.',
    'It can’t call while it is closed or the computer sleeps. What came due meanwhile is said as soon as it runs again, and labelled late.',
  ];
}

/** What the trial of a notice came to. */
export function trialWords(trial: 'taken' | 'not-taken' | 'seen' | 'not-seen'): string {
  switch (trial) {
    case 'taken':
      return 'The browser has taken the notice. Did it appear?';
    case 'not-taken':
      return 'The browser did not keep the notice on its list, so it may not have appeared. Keep the Now screen open at closing time; the figure on the toolbar button counts what is due.';
    case 'seen':
      return 'Good: calls will reach you like that while the browser runs.';
    case 'not-seen':
      return 'Then the computer holds it back: look for do-not-disturb or focus hours, and for this browser under notifications in the computer’s settings. Until then keep the Now screen open at closing time; the figure on the toolbar button counts what is due.';
  }
}
