import { hashOfText } from '../../journal/entry-hash.ts';
import { everySubject } from '../message/subjects.ts';
import type { Delivered } from '../wire/wire.ts';
import { FetchRun, PAGE } from './fetch-run.ts';
import { type Fetching, type FetchResult, FROM_THE_BEGINNING, type Position } from './fetching.ts';
import { answered, inOrder, whileAnswered } from './stopped.ts';

/** Fetches what the server has and takes in what is good of it. One bad message costs only itself. */
export async function fetchNew(fetching: Fetching, from: Position): Promise<FetchResult> {
  const run = new FetchRun(fetching, from.waiting);
  let position = from;
  const stopped = await whileAnswered(async () => {
    if (!(await run.isSameServer(from))) {
      run.restored = true;
      position = FROM_THE_BEGINNING;
      run.waiting.clear();
    }
    const { membership, wire } = fetching;
    for (;;) {
      const page = answered(await wire.from(position.place + 1, everySubject(membership.team), PAGE));
      let next = position.place + 1;
      for (const message of page) {
        inOrder(message, next);
        next = message.place + 1;
        await run.take(message);
        // Only what was brought in counts as looked at: the rest would be lost when this is cut off.
        if (run.isClear) position = { ...position, ...positionAt(message) };
      }
      await run.flush();
      const last = page.at(-1);
      if (last !== undefined) position = { ...position, ...positionAt(last) };
      if (page.length < PAGE) break;
      await fetching.reached?.({ ...position, waiting: run.standing() });
    }
    await run.retryWaiting();
  });
  return { position: { ...position, waiting: run.standing() }, added: run.added, told: run.sentences(), stopped };
}

const positionAt = ({ place, data }: Delivered) => ({ place, hash: hashOfText(data) });
