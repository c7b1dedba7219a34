import { api } from './extension-api.ts';

/** Runs when the extension was installed or updated, and when the browser starts. */
export function onStart(listener: () => void): void {
  api.runtime.onInstalled.addListener(() => listener());
  api.runtime.onStartup.addListener(() => listener());
}
