import { render } from 'preact';
import { deleteStore } from '../../src/store/delete-store.ts';
import { deleteDemo } from '../../src/ui/demo-mode.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import './who-asks.css';

/** Says on every screen of the demo that it is one; one press leaves it and deletes it. */
export function DemoStrip() {
  const { store } = useWorkspace();
  const leave = async () => {
    const page = document.getElementById('page');
    // A screen that still read would open the demo's database anew.
    if (page !== null) render(null, page);
    store.close();
    await deleteDemo(deleteStore);
    location.replace(`${location.pathname}#/lots`);
  };
  return (
    <section class="who-asks no-print" aria-label="Demo">
      <strong>Demo</strong>
      <span>A made-up dealer’s week. Your own lots are not touched, and no reminders come from it.</span>
      <button type="button" onClick={() => void leave()}>
        Leave the demo
      </button>
    </section>
  );
}
