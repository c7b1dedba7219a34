import { useEffect } from 'preact/hooks';
import { Lazy } from '../src/ui/lazy.tsx';
import { Frame } from './frame.tsx';
import type { Route } from './route.ts';
import { useRoute } from './use-route.ts';
import { WatchlistScreen } from './watchlist/watchlist-screen.tsx';

const loadWorksheet = () => import('./worksheet/worksheet-screen.tsx').then((m) => m.WorksheetScreen);
const loadAdd = () => import('./add/add-screen.tsx').then((m) => m.AddScreen);
const loadSetup = () => import('./setup/setup-screen.tsx').then((m) => m.SetupScreen);
const loadKeep = () => import('./keep/keep-screen.tsx').then((m) => m.KeepScreen);
const loadDemo = () => import('./demo-load.tsx').then((m) => m.DemoLoad);

const TITLES: Record<Route['screen'], string> = {
  lots: 'Lots',
  lot: 'Worksheet',
  add: 'Add lots',
  setup: 'Setup',
  backup: 'Keep',
  'demo-load': 'Demo',
  unknown: 'Not found',
};

/** The screen the address asks for, in its frame. */
export function App() {
  const route = useRoute();
  useEffect(() => {
    document.title = `${TITLES[route.screen]} · Headroom`;
  }, [route.screen]);
  return (
    <Frame screen={route.screen}>
      <Screen route={route} />
    </Frame>
  );
}

function Screen({ route }: { route: Route }) {
  switch (route.screen) {
    case 'lots':
      return <WatchlistScreen />;
    case 'lot':
      return <Lazy load={loadWorksheet} props={{ id: route.id }} />;
    case 'add':
      return <Lazy load={loadAdd} props={{}} />;
    case 'setup':
      return <Lazy load={loadSetup} props={{ part: route.part }} />;
    case 'backup':
      return <Lazy load={loadKeep} props={{}} />;
    case 'demo-load':
      return <Lazy load={loadDemo} props={{}} />;
    case 'unknown':
      return (
        <section class="stack">
          <h1>There is no such page</h1>
          <p>
            <a href="#/lots">Go to the lots</a>
          </p>
        </section>
      );
  }
}
