import { api } from './extension-api.ts';

export interface Notice {
  /** Stable: showing the same id again replaces the notice instead of doubling it. */
  readonly id: string;
  readonly title: string;
  readonly body: string;
  /** A loud one stays until it is answered, where the browser can do that (Firefox can't); a quiet one makes no sound. */
  readonly loudness: 'loud' | 'quiet';
  /** What its buttons say, at most two; left out where the browser has none. */
  readonly buttons: readonly string[];
}

/** Shows a notice; resolves once the browser has taken it, rejects when it refused. */
export async function showNotice(notice: Notice): Promise<void> {
  const basic = {
    type: 'basic' as const,
    iconUrl: api.runtime.getURL('icons/128.png'),
    title: notice.title,
    message: notice.body,
  };
  try {
    await api.notifications.create(notice.id, {
      ...basic,
      requireInteraction: notice.loudness === 'loud',
      silent: notice.loudness === 'quiet',
      priority: notice.loudness === 'loud' ? 2 : 0,
      buttons: notice.buttons.map((title) => ({ title })),
    });
  } catch {
    // Firefox rejects the options it does not know; the plain form is the one every browser takes.
    await api.notifications.create(notice.id, basic);
  }
}

export async function clearNotice(id: string): Promise<void> {
  await api.notifications.clear(id);
}

/** The ids of the notices on the screen. */
export async function noticeIds(): Promise<readonly string[]> {
  return Object.keys(await api.notifications.getAll());
}

export function onNoticeClicked(listener: (id: string) => void): void {
  api.notifications.onClicked.addListener(listener);
}

/** Calls back with the notice's id and which of its buttons was pressed; never where notices have none. */
export function onNoticeButton(listener: (id: string, index: number) => void): void {
  if (noticesHaveButtons()) api.notifications.onButtonClicked.addListener(listener);
}

/** Whether this browser puts buttons on notices. */
export const noticesHaveButtons = (): boolean =>
  // Firefox has the event and never raises it; it alone can name itself.
  api.notifications.onButtonClicked !== undefined && !('getBrowserInfo' in api.runtime);

/** Whether a notice can stay until it is answered; the browsers that put buttons on notices are those that can. */
export const noticesStay = noticesHaveButtons;

/** What the browser says about showing notices; Firefox can't be asked and is taken at its word. */
export async function noticesAllowed(): Promise<boolean> {
  if (typeof api.notifications.getPermissionLevel !== 'function') return true;
  return (await api.notifications.getPermissionLevel()) === 'granted';
}
