import { api } from './extension-api.ts';

/** The short text on the toolbar button; an empty one takes it away. */
export async function showBadge(text: string, title: string): Promise<void> {
  await api.action.setBadgeText({ text });
  await api.action.setTitle({ title });
  if (text !== '') await api.action.setBadgeBackgroundColor({ color: '#0b5d66' });
}
