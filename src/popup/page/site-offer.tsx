import { useEffect, useState } from 'preact/hooks';
import { allowedSites, requestSite } from '../../browser/site-permission.ts';

/** Offers to keep the watched lots of a site up to date whenever the user opens their pages; nothing, where that is so already. */
export function SiteOffer({ site }: { site: string }) {
  const [allowed, setAllowed] = useState(true);
  const [said, setSaid] = useState('');
  useEffect(() => {
    allowedSites().then((sites) => setAllowed(sites.includes(site)), reportError);
  }, [site]);
  if (site === '' || (allowed && said === '')) return null;
  const ask = async () => {
    // The browser asks the user itself, and may close this popup while it does.
    const given = await requestSite(site);
    setAllowed(given);
    setSaid(
      given ? `Pages of ${site} are read when you open them. Setup, Sites, takes it back.` : 'Nothing has changed.',
    );
  };
  return (
    <p class="small">
      {!allowed && (
        <button
          type="button"
          class="plain inline"
          onClick={() => ask().catch((error: unknown) => setSaid(String(error)))}
        >
          Bring price and close up to date whenever I open a watched lot of {site}
        </button>
      )}
      <span role="status">{said}</span>
    </p>
  );
}
