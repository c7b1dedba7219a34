import { MINUTE } from '../domain/time/units.ts';

/** Hands a file to the browser's own download, which asks or saves as the user has set it. Needs no permission. */
export function saveFile(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The download has begun by then; holding the address longer would hold the whole file in memory.
  setTimeout(() => URL.revokeObjectURL(url), MINUTE);
}
