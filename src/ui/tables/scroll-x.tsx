import type { ComponentChildren } from 'preact';

/** A wide table that scrolls sideways on a narrow screen, by keyboard too. */
export function ScrollX({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable without a mouse (WCAG 2.1.1)
    <div class="scroll-x" tabIndex={0} role="group" aria-label={label}>
      {children}
    </div>
  );
}
