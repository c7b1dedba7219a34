import { existsSync, mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { DAY } from '../src/domain/time/units.ts';

const PREFIX = 'headroom-test-';

/** A new folder for this process alone, named so that a later run knows whose it was. */
export function temporaryFolder(inside = tmpdir()): string {
  return mkdtempSync(path.join(inside, `${PREFIX}${namespace()}-${process.pid}-`));
}

export function removeFolder(folder: string): void {
  // A browser that has just quit may still be writing for a moment.
  rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
}

/**
 * Clears away what runs that were killed have left behind: browsers that still use a folder of a process that no longer
 * exists, and these folders. Nothing of a living run is touched, not even of one whose processes can't be seen from here.
 * @param now milliseconds since 1970
 */
export function sweepLeftovers(inside = tmpdir(), now = Date.now()): void {
  for (const name of readdirSync(inside)) {
    const folder = path.join(inside, name);
    if (!name.startsWith(PREFIX) || isInUse(name.slice(PREFIX.length), folder, now)) continue;
    endUsers(folder);
    removeFolder(folder);
  }
}

/** A container may share the folder for temporary files and yet number its processes for itself: those can't be asked after. */
function isInUse(owner: string, folder: string, now: number): boolean {
  const [, where, pid] = /^(\d+)-(\d+)-/.exec(owner) ?? [];
  return where === namespace() ? isAlive(Number(pid)) : now - lastTouched(folder, now) < DAY;
}

/** Which numbering of processes this process is in; 0 where the system has only one. */
function namespace(): string {
  try {
    return /\d+/.exec(readlinkSync('/proc/self/ns/pid'))?.[0] ?? '0';
  } catch {
    // Only Linux has several.
    return '0';
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Not permitted means that there is such a process, of somebody else.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function lastTouched(folder: string, now: number): number {
  try {
    return statSync(folder).mtimeMs;
  } catch {
    // Its own run has just removed it.
    return now;
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
