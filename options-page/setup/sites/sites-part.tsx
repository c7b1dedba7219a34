import { useEffect, useState } from 'preact/hooks';
import { allowedSites, onSitesChanged } from '../../../src/browser/site-permission.ts';
import { siteOf, withSite } from '../../../src/domain/setup/site.ts';
import { Contained } from '../../../src/ui/contained.tsx';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { SiteEntry } from './site-entry.tsx';

/** What was said about each sale site: whose it is, where on its pages values were pointed at, and what it may be read for. */
export function SitesPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const allowed = useAllowedSites();
  const names = [...new Set([...(setup.sites ?? []).map(({ site }) => site), ...allowed])].sort();
  return (
    <PartFrame
      part={part}
      intro="Headroom reads a page only when you press its button there. If you turn on auto-read for a site, it reads each page you open there, so that the price now and the close of your lots stay up to date. It never opens a page on its own."
    >
      <div class="stack">
        {names.length === 0 && (
          <p class="setup-prose">
            No sites yet. Open a lot on its sale site, press the Headroom button and choose{' '}
            <strong>Read this page</strong>. What you correct there can be remembered for the site.
          </p>
        )}
        {names.map((name) => (
          <Contained key={name} what={name} of={setup}>
            <SiteEntry
              site={siteOf(setup.sites, name)}
              venues={setup.venues}
              allowed={allowed.includes(name)}
              onChange={(site, said) => change({ sites: withSite(setup.sites, site) }, said)}
            />
          </Contained>
        ))}
      </div>
    </PartFrame>
  );
}

/** The sites that may be read, as they are now in the browser. */
function useAllowedSites(): readonly string[] {
  const [sites, setSites] = useState<readonly string[]>([]);
  useEffect(() => {
    const look = () => void allowedSites().then(setSites, reportError);
    look();
    return onSitesChanged(look);
  }, []);
  return sites;
}
