import type { Refusal } from '../../src/domain/outcome.ts';

/** The whole page when the lots can't be shown: what happened, and that nothing was lost by it. */
export function CannotOpen({ refusal }: { refusal: Refusal }) {
  return (
    <main class="stack">
      <h1>Your lots can’t be shown</h1>
      <p role="alert">{refusal.message}</p>
      <div class="row">
        <button type="button" class="main" onClick={() => location.reload()}>
          Reload the page
        </button>
      </div>
    </main>
  );
}
