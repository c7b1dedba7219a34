import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const PREFIX = 'headroom-test-';

/** A new folder for this process alone, named so that a later run knows whose it was. */
export function temporaryFolder(): string {
  return mkdtempSync(path.join(tmpdir(), `${PREFIX}${process.pid}-`));
}

export function removeFolder(folder: string): void {
  // A browser that has just quit may still be writing for a moment.
  rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
}

/**
 * Clears away what runs that were killed have left behind: browsers that still use a folder of a process that no longer
 * exists, and these folders. Nothing of a living run is touched.
 */
export function sweepLeftovers(): void {
  const left = readdirSync(tmpdir()).filter((name) => name.startsWith(PREFIX) && !ownerLives(name));
  for (const name of left) {
    endUsers(path.join(tmpdir(), name));
    removeFolder(path.join(tmpdir(), name));
  }
}

function ownerLives(folderName: string): boolean {
  const pid = Number(folderName.slice(PREFIX.length).split('-')[0]);
  if (!Number.isSafeInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Not permitted means that there is such a process, of somebody else.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * Kills every program that was started on a folder, as a power cut would. Gives how many there were: one that was killed
 * takes a moment to be gone, and may have begun another. Does nothing where there is no /proc.
 */
export function endUsers(folder: string): number {
  if (!existsSync('/proc')) return 0;
  const users = readdirSync('/proc').filter((name) => /^\d+$/.test(name) && commandLine(name).includes(folder));
  for (const pid of users) killIfThere(Number(pid));
  return users.length;
}

function commandLine(pid: string): string {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8');
  } catch {
    // It ended while we were looking.
    return '';
  }
}

function killIfThere(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It ended by itself, with its parent.
  }
}
