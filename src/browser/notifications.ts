import { api } from './extension-api.ts';

export interface Notice {
  /** Stable: showing the same id again replaces the notice instead of doubling it. */
  readonly id: string;
  readonly title: string;
  readonly body: string;
  /** Stays until it is answered, where the browser can do that (Firefox can't). */
  readonly stays: boolean;
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
    await api.notifications.create(notice.id, { ...basic, requireInteraction: notice.stays, priority: 2 });
  } catch {
    // Firefox rejects the options it does not know; the plain form is the one every browser takes.
    await api.notifications.create(notice.id, basic);
  }
}

export async function clearNotice(id: string): Promise<void> {
  await api.notifications.clear(id);
}

export function onNoticeClicked(listener: (id: string) => void): void {
  api.notifications.onClicked.addListener(listener);
}

/** What the browser says about showing notices; Firefox can't be asked and is taken at its word. */
export async function noticesAllowed(): Promise<boolean> {
  if (typeof api.notifications.getPermissionLevel !== 'function') return true;
  return (await api.notifications.getPermissionLevel()) === 'granted';
}
