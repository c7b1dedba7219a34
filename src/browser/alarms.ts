import browser from 'webextension-polyfill';
import type { Instant } from '../domain/time/instant.ts';

/** Browsers raise anything nearer to this; asking for less only hides the delay. */
const NEAREST_MS = 30_000;

/** Asks to be woken at `when`, or half a minute from `now` if that is later. A second call replaces the first. */
export async function wakeAt(name: string, when: Instant, now: Instant): Promise<void> {
  // An alarm that was set in time rings sooner than one that is set anew so shortly before.
  if (when < now + NEAREST_MS && (await nextWake(name)) === when) return;
  await browser.alarms.create(name, { when: Math.max(when, now + NEAREST_MS) });
}

/** Asks to be woken again and again: the safety net under a single alarm that might get lost. */
export async function wakeEvery(name: string, minutes: number): Promise<void> {
  const standing = await browser.alarms.get(name);
  if (standing?.periodInMinutes !== minutes) await browser.alarms.create(name, { periodInMinutes: minutes });
}

/** When the alarm of this name will ring, in milliseconds since 1970; undefined when none is set. */
export async function nextWake(name: string): Promise<number | undefined> {
  return (await browser.alarms.get(name))?.scheduledTime;
}

export async function cancelWake(name: string): Promise<void> {
  await browser.alarms.clear(name);
}

export function onWake(listener: (name: string) => void): void {
  browser.alarms.onAlarm.addListener((alarm) => listener(alarm.name));
}
