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
      ? 'It shows notifications.'
      : 'It shows no notifications from Headroom: they are turned off in its settings. The number on the toolbar button and the Now screen show every reminder. Each is shown as soon as notifications are on again.',
    buttons
      ? 'A notification has two buttons that fit the moment, such as “remind me later” or “extended”. The Now screen has all of them.'
      : 'Notifications have no buttons here. Click one to open the lot on the Now screen, which has them all.',
    stays
      ? 'The last reminder for a lot that needs a bid stays on the screen until you answer it. A quiet one goes away on its own, without a sound.'
      : 'Every notification goes away on its own after a few seconds here. The number on the toolbar button stays.',
    'It wakes Headroom every two minutes and for each reminder, even after the background was put to sleep.',
    'It can’t remind you while it is closed or the computer is asleep. What came due then is shown as soon as it runs again, labeled late.',
  ];
}

/** What the trial of a notice came to. */
export function trialWords(trial: 'taken' | 'not-taken' | 'seen' | 'not-seen'): string {
  switch (trial) {
    case 'taken':
      return 'The browser accepted the notification. Did it appear?';
    case 'not-taken':
      return 'The browser did not keep the notification, so it may not have appeared. Keep the Now screen open at closing time. The number on the toolbar button counts what is due.';
    case 'seen':
      return 'Good. Reminders will reach you like that while the browser is running.';
    case 'not-seen':
      return 'Then the computer is blocking it. Check do-not-disturb or focus hours, and this browser under notifications in the computer’s settings. Until then keep the Now screen open at closing time. The number on the toolbar button counts what is due.';
  }
}
