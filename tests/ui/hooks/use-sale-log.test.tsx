// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { type SaleLog, useSaleLog } from '../../../src/ui/hooks/use-sale-log.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { type Said, storeWorkspace } from '../../options-page/store-workspace.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';

const noStanding = () => ({ maxBid: null, headroom: null, missing: [] });

beforeEach(() => freshBrowser());
afterEach(() => act(() => render(null, document.body)));

test('a proxy entered again before the screen has heard of the first is raised or cut, not placed a second time', async () => {
  const store = await openTestStore();
  const { lots } = value(await store.addLots('typed', [{ facts: { lotNumber: '7' } }]));
  const stale = await store.lot(lots[0] as LotId);
  if (stale === null) throw new Error('the lot is not there');
  const said: Said[] = [];
  const logs: SaleLog[] = [];
  const Page = () => {
    logs.push(useSaleLog(noStanding));
    return null;
  };
  const workspace = storeWorkspace(store, [stale], startingSetup(zone('America/Boise')), said);
  act(() =>
    render(
      <WorkspaceContext.Provider value={workspace}>
        <Page />
      </WorkspaceContext.Provider>,
      document.body,
    ),
  );
  for (const dollars of [9000, 9500, 9200]) expect(await logs[0]?.proxy(stale, cents(dollars * 100))).toBeNull();
  const actions = (await store.lot(stale.id))?.sale?.bids.map(({ action }) => action);
  expect(actions).toEqual(['proxy-placed', 'proxy-raised', 'proxy-cut']);
  store.close();
});
