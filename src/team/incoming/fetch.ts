import { hashOfText } from '../../journal/entry-hash.ts';
import { everySubject } from '../message/subjects.ts';
import { answered, FetchRun, inOrder, PAGE } from './fetch-run.ts';
import { type Fetching, type FetchResult, FROM_THE_BEGINNING, type Position } from './fetching.ts';

/** Fetches what the server has and takes in what is good of it. One bad message costs only itself. */
export async function fetchNew(fetching: Fetching, from: Position): Promise<FetchResult> {
  const run = new FetchRun(fetching, from.waiting);
  let position = from;
  const stopped = await run.whileAnswered(async () => {
    if (!(await run.isSameServer(from))) {
      run.restored = true;
      position = FROM_THE_BEGINNING;
      run.waiting.clear();
    }
    const { membership, wire } = fetching;
    for (;;) {
      const page = answered(await wire.from(position.place + 1, everySubject(membership.team), PAGE));
      for (const message of page) {
        inOrder(message, position.place + 1);
        await run.take(message);
        position = { ...position, place: message.place, hash: hashOfText(message.data) };
      }
      if (page.length < PAGE) break;
    }
    await run.retryWaiting();
  });
  return { position: { ...position, waiting: run.waiting }, added: run.added, told: run.sentences(), stopped };
}
