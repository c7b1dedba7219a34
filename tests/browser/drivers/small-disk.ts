import { execFileSync } from 'node:child_process';
import { closeSync, openSync, rmSync, writeSync } from 'node:fs';
import path from 'node:path';
import { removeFolder, temporaryFolder } from '../../../scripts/temporary-folder.ts';

const MEGABYTE = Buffer.alloc(1024 * 1024, 1);
const PAGE = Buffer.alloc(4096, 1);

/** A disk of its own, in memory, that can be filled to the last byte without harm to the machine's. */
export class SmallDisk {
  readonly folder = temporaryFolder();

  constructor(megabytes: number) {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', this.folder]);
  }

  /** Whether this machine lets us have one: only the superuser of Linux may. */
  static get canBe(): boolean {
    return process.platform === 'linux' && process.getuid?.() === 0;
  }

  fill(): void {
    const file = openSync(this.#filler, 'a');
    for (const block of [MEGABYTE, PAGE]) while (fits(file, block));
    closeSync(file);
  }

  free(): void {
    rmSync(this.#filler, { force: true });
  }

  remove(): void {
    // A browser that has just quit may still have a file open on it.
    execFileSync('umount', ['-l', this.folder]);
    removeFolder(this.folder);
  }

  get #filler(): string {
    return path.join(this.folder, 'filler');
  }
}

function fits(file: number, block: Buffer): boolean {
  try {
    return writeSync(file, block) === block.length;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOSPC') return false;
    throw error;
  }
}
