import browser, { type Notifications } from 'webextension-polyfill';

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

/** What the typings, which are Firefox's, do not know. */
interface ChromiumOptions {
  readonly requireInteraction: boolean;
  readonly silent: boolean;
  readonly buttons: readonly { readonly title: string }[];
}
interface ChromiumNotifications extends Notifications.Static {
  readonly getPermissionLevel: () => Promise<'granted' | 'denied'>;
}

/** Shows a notice; resolves once the browser has taken it, rejects when it refused. */
export async function showNotice(notice: Notice): Promise<void> {
  const basic = {
    type: 'basic' as const,
    iconUrl: browser.runtime.getURL('icons/128.png'),
    title: notice.title,
    message: notice.body,
  };
  try {
    const whole: Notifications.CreateNotificationOptions & ChromiumOptions = {
      ...basic,
      requireInteraction: notice.loudness === 'loud',
      silent: notice.loudness === 'quiet',
      priority: notice.loudness === 'loud' ? 2 : 0,
      buttons: notice.buttons.map((title) => ({ title })),
    };
    await browser.notifications.create(notice.id, whole);
  } catch {
    // Firefox rejects the options it does not know; the plain form is the one every browser takes.
    await browser.notifications.create(notice.id, basic);
  }
}

export async function clearNotice(id: string): Promise<void> {
  await browser.notifications.clear(id);
}

/** The ids of the notices on the screen. */
export async function noticeIds(): Promise<readonly string[]> {
  return Object.keys(await browser.notifications.getAll());
}

export function onNoticeClicked(listener: (id: string) => void): void {
  browser.notifications.onClicked.addListener(listener);
}

/** Calls back with the notice's id and which of its buttons was pressed; never where notices have none. */
export function onNoticeButton(listener: (id: string, index: number) => void): void {
  if (noticesHaveButtons()) browser.notifications.onButtonClicked.addListener(listener);
}

/** Whether this browser puts buttons on notices. */
export const noticesHaveButtons = (): boolean =>
  // Firefox has the event and never raises it; it alone can name itself.
  browser.notifications.onButtonClicked !== undefined && !('getBrowserInfo' in browser.runtime);

/** Whether a notice can stay until it is answered; the browsers that put buttons on notices are those that can. */
export const noticesStay = noticesHaveButtons;

/** What the browser says about showing notices; Firefox can't be asked and is taken at its word. */
export async function noticesAllowed(): Promise<boolean> {
  const { getPermissionLevel }: Partial<ChromiumNotifications> = browser.notifications;
  return getPermissionLevel === undefined || (await getPermissionLevel()) === 'granted';
}
