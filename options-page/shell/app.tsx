import { Contained } from '../../src/ui/contained.tsx';
import { isDemo } from '../../src/ui/demo-mode.ts';
import { Lazy } from '../../src/ui/lazy.tsx';
import { LongRunNote } from '../../src/ui/long-run.tsx';
import { useShownSubject } from '../../src/ui/page-subject.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { FolderWords } from '../../src/views/books/folder-words.ts';
import { BooksMeanwhile } from '../books/books-opening.tsx';
import { WatchlistScreen } from '../lots/watchlist-screen.tsx';
import { CountedFrame } from './counted-frame.tsx';
import { DemoStrip } from './demo-strip.tsx';
import { useLiveTeam } from './keep-live.ts';
import { OldZoneNote } from './old-zone-note.tsx';
import type { Route } from './route.ts';
import { screenTitle } from './screen-title.ts';
import { StoreClock } from './store-clock.tsx';
import { TeamLine } from './team-line.tsx';
import { usePageHeads } from './use-page-heads.ts';
import { useRoute } from './use-route.ts';
import { WhoAsks } from './who-asks.tsx';

const forBuying = () => import('./screens-for-buying.ts');
const forAfter = () => import('./screens-for-after.ts');
const forTheDesk = () => import('./screens-for-the-desk.ts');
const loadWorksheet = () => forBuying().then((m) => m.WorksheetScreen);
const loadNow = () => forBuying().then((m) => m.NowScreen);
const loadLife = () => forBuying().then((m) => m.LifeScreen);
const loadWeek = () => forBuying().then((m) => m.WeekScreen);
const loadPlan = () => forBuying().then((m) => m.PlanScreen);
const loadResults = () => forAfter().then((m) => m.ResultsScreen);
const loadToDo = () => forAfter().then((m) => m.ToDoScreen);
const loadWon = () => forAfter().then((m) => m.WonScreen);
const loadDisputes = () => forAfter().then((m) => m.DisputesScreen);
const loadDispute = () => forAfter().then((m) => m.DisputeScreen);
const loadOpenDispute = () => forAfter().then((m) => m.OpenDisputeScreen);
const loadAdd = () => forTheDesk().then((m) => m.AddScreen);
const loadSetup = () => forTheDesk().then((m) => m.SetupScreen);
const loadKeep = () => forTheDesk().then((m) => m.KeepScreen);
const loadBooks = () => forTheDesk().then((m) => m.BooksScreen);
const loadStart = () => forTheDesk().then((m) => m.StartScreen);
const loadWords = () => forTheDesk().then((m) => m.WordsScreen);
const loadLearn = () => forTheDesk().then((m) => m.LearnScreen);
const loadTeam = () => import('../team/team-screen.tsx').then((m) => m.TeamScreen);
const loadDemo = () => import('../demo-load/demo-load.tsx').then((m) => m.DemoLoad);

/**
 * The screen the address asks for, in its frame.
 * @param folders the purchase folders that the page began with, in words
 */
export function App({ folders = [] }: { folders?: readonly FolderWords[] }) {
  const route = useRoute();
  const workspace = useWorkspace();
  const { store } = workspace.setup;
  useLiveTeam(workspace.store);
  usePageHeads(screenTitle(route, useShownSubject()), store);
  return (
    <CountedFrame
      screen={route.screen}
      clock={<StoreClock zone={store.zone} name={store.name} />}
      note={
        <>
          <LongRunNote hash={`#/${route.screen}`} />
          {isDemo() ? <DemoStrip /> : route.screen !== 'start' && <WhoAsks />}
          <TeamLine zone={store.zone} />
          <OldZoneNote zone={store.zone} now={Date.now()} />
        </>
      }
    >
      <Contained key={route.screen} what="This screen" of={workspace}>
        <Screen route={route} folders={folders} />
      </Contained>
    </CountedFrame>
  );
}

function Screen({ route, folders }: { route: Route; folders: readonly FolderWords[] }) {
  switch (route.screen) {
    case 'lots':
      return <WatchlistScreen />;
    case 'lot':
      return <Lazy load={loadWorksheet} props={{ id: route.id }} />;
    case 'week':
      return <Lazy load={loadWeek} props={route} />;
    case 'plan':
      return <Lazy load={loadPlan} props={{}} />;
    case 'now':
      return <Lazy load={loadNow} props={{ id: route.id }} />;
    case 'add':
      return <Lazy load={loadAdd} props={{}} />;
    case 'history':
      return <Lazy load={loadLife} props={{ id: route.id }} />;
    case 'results':
      return <Lazy load={loadResults} props={{ part: route.part }} />;
    case 'setup':
      return <Lazy load={loadSetup} props={{ part: route.part }} />;
    case 'books':
      return (
        <Lazy
          load={loadBooks}
          props={{ part: route.part, more: route.more, begun: folders }}
          meanwhile={<BooksMeanwhile part={route.part} first={folders} />}
        />
      );
    case 'learn':
      return <Lazy load={loadLearn} props={{ part: route.part }} />;
    case 'backup':
      return <Lazy load={loadKeep} props={{}} />;
    case 'team':
      return <Lazy load={loadTeam} props={{}} />;
    case 'todo':
      return <Lazy load={loadToDo} props={{}} />;
    case 'won':
      return <Lazy load={loadWon} props={{ id: route.id }} />;
    case 'disputes':
      return <Lazy load={loadDisputes} props={{}} />;
    case 'dispute':
      return <Lazy load={loadDispute} props={{ id: route.id }} />;
    case 'open-dispute':
      return <Lazy load={loadOpenDispute} props={{ lot: route.lot }} />;
    case 'words':
      return <Lazy load={loadWords} props={{ term: route.term }} />;
    case 'start':
      return <Lazy load={loadStart} props={{}} />;
    case 'demo-load':
      return <Lazy load={loadDemo} props={{}} />;
    case 'unknown':
      return (
        <section class="stack">
          <h1>No such page</h1>
          <p>
            <a href="#/lots">Go to the lots</a>
          </p>
        </section>
      );
  }
}
