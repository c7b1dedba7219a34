import { useEffect, useRef } from 'preact/hooks';
import { Lazy } from '../../src/ui/lazy.tsx';
import { AccountsPart } from './accounts-part.tsx';
import { AfterPart } from './after/after-part.tsx';
import { AlertsPart } from './alerts/alerts-part.tsx';
import { BusyPart } from './busy/busy-part.tsx';
import { CertificatesPart } from './certificates-part.tsx';
import { CostsPart } from './costs-part.tsx';
import { EstimatingPart } from './estimating-part.tsx';
import { FeesPart } from './fees/fees-part.tsx';
import { FilePart } from './file/file-part.tsx';
import { HoldingPart } from './holding/holding-part.tsx';
import { ReconPart } from './recon/recon-part.tsx';
import { RulesPart } from './rules-part.tsx';
import { SetupEditContext } from './setup-edit.ts';
import { SetupNav } from './setup-nav.tsx';
import { partOf, type SetupPart } from './setup-parts.ts';
import { StorePart } from './store-part.tsx';
import { TitlesPart } from './titles-part.tsx';
import { useSectionDrafts } from './use-section-drafts.ts';
import { VenuesPart } from './venues/venues-part.tsx';
import './setup.css';
import '../../src/ui/tables/cells/cells.css';

// It alone of all parts asks the browser itself.
const loadSites = () => import('./sites/sites-part.tsx').then((m) => m.SitesPart);

/** Everything the dealer tells the tool once: his store, his venues and their fees, his rules and his costs. */
export function SetupScreen({ part: id }: { readonly part: string }) {
  const edit = useSectionDrafts();
  const part = partOf(id);
  const root = useRef<HTMLDivElement>(null);
  const shown = useRef(id);
  // The link that was followed is gone or far down the page: reading goes on at the head of the new part.
  useEffect(() => {
    if (shown.current === id) return;
    shown.current = id;
    root.current?.querySelector('h1')?.focus();
  }, [id]);
  return (
    <SetupEditContext.Provider value={edit}>
      <div class="setup" ref={root}>
        <SetupNav current={part} />
        {part === undefined ? <NoSuchPart id={id} /> : <Part key={part.id} part={part} />}
      </div>
    </SetupEditContext.Provider>
  );
}

function Part({ part }: { part: SetupPart }) {
  switch (part.id) {
    case 'store':
      return <StorePart part={part} />;
    case 'venues':
      return <VenuesPart part={part} />;
    case 'fees':
      return <FeesPart part={part} />;
    case 'rules':
      return <RulesPart part={part} />;
    case 'costs':
      return <CostsPart part={part} />;
    case 'recon':
      return <ReconPart part={part} />;
    case 'holding':
      return <HoldingPart part={part} />;
    case 'titles':
      return <TitlesPart part={part} />;
    case 'busy':
      return <BusyPart part={part} />;
    case 'alerts':
      return <AlertsPart part={part} />;
    case 'after':
      return <AfterPart part={part} />;
    case 'estimating':
      return <EstimatingPart part={part} />;
    case 'sites':
      return <Lazy load={loadSites} props={{ part }} />;
    case 'certificates':
      return <CertificatesPart part={part} />;
    case 'accounts':
      return <AccountsPart part={part} />;
    case 'file':
      return <FilePart part={part} />;
  }
}

function NoSuchPart({ id }: { id: string }) {
  return (
    <div class="stack">
      <h1 tabIndex={-1}>Setup</h1>
      <p>
        The setup has no part “{id}”. Choose one from the list, or start with the <a href="#/setup/store">store</a>.
      </p>
    </div>
  );
}
