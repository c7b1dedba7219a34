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
    setSaid(given ? `Auto-read is on for ${site}. You can turn it off in Setup, Sites.` : 'Nothing has changed.');
  };
  return (
    <p class="small">
      {!allowed && (
        <button
          type="button"
          class="plain inline"
          onClick={() => ask().catch((error: unknown) => setSaid(String(error)))}
        >
          Update price and close whenever I open a watched lot on {site}
        </button>
      )}
      <span role="status">{said}</span>
    </p>
  );
}
