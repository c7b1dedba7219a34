import { existsSync, readFileSync, writeSync } from 'node:fs';
import path from 'node:path';
import { type Outcome, ok, refuse } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { Surroundings } from './worksheet-command.ts';

/** The machine that a command runs on. */
export const machine = (): Surroundings => ({
  read,
  out: (text) => writeAll(1, text),
  warn: (line) => writeAll(2, `${line}\n`),
  now: instant(Date.now()),
  environment: process.env,
});

function read(file: string): Outcome<Uint8Array> {
  try {
    return ok(readFileSync(file === '-' ? 0 : whereItIs(file)));
  } catch (error) {
    const code = Object(error).code;
    if (code === 'ENOENT') return refuse('not-found', `There is no file ${file}. Check the path.`);
    if (code === 'EISDIR') return refuse('folder', `${file} is a folder. Name a file in it.`);
    return refuse('unreadable', `${file} can’t be read: ${error instanceof Error ? error.message : String(error)}.`);
  }
}

/** Paths are meant from where the command was given; npm and the task runner have gone to the top of the project since. */
function whereItIs(file: string): string {
  const { INIT_CWD, PWD } = process.env;
  const from = [INIT_CWD, PWD, process.cwd()].filter((folder) => folder !== undefined);
  return from.map((folder) => path.resolve(folder, file)).find((candidate) => existsSync(candidate)) ?? file;
}

/** Writes to the end before it returns: the task runner ends the process, and a pipe would lose what is still under way. */
function writeAll(descriptor: 1 | 2, text: string): void {
  const bytes = Buffer.from(text);
  let done = 0;
  while (done < bytes.length) {
    try {
      done += writeSync(descriptor, bytes, done);
    } catch (error) {
      const code = Object(error).code;
      // The reader has had enough, as `head` has after its lines.
      if (code === 'EPIPE') return;
      if (code !== 'EAGAIN') throw error;
    }
  }
}
