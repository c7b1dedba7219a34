/**
 * What is too small for a thumb: WCAG 2.2, 2.5.8 Target Size (Minimum), 24 by 24 CSS pixels. Left out as there: links within a
 * sentence, what the browser itself draws (bare boxes have their label as a target too), and a target around whose middle a
 * circle of 24 pixels touches no other target. It runs in the page, so it uses nothing from around it.
 */
export function smallTargets(): readonly string[] {
  const LEAST = 24;
  const targets = [...document.querySelectorAll<HTMLElement>('a[href], button, summary, input, select, textarea')]
    .filter((each) => each.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
    .filter((each) => !each.closest('.visually-hidden') && !each.matches('.skip-link'))
    .map((each) => {
      const label = each.matches('input') ? each.closest('label') : null;
      // A link that is stretched over its whole row is as large as the row.
      const row = getComputedStyle(each, '::after').position === 'absolute' ? each.offsetParent : null;
      return { each, box: (label ?? row ?? each).getBoundingClientRect() };
    })
    .filter(({ box }) => box.width > 0 && box.height > 0);
  const inSentence = (each: HTMLElement) =>
    each.matches('a') &&
    getComputedStyle(each).display === 'inline' &&
    (each.parentElement?.textContent ?? '').trim().length > (each.textContent ?? '').trim().length + 8;
  const near = (a: DOMRect, b: DOMRect) => {
    const x = a.left + a.width / 2;
    const y = a.top + a.height / 2;
    const dx = Math.max(b.left - x, 0, x - b.right);
    const dy = Math.max(b.top - y, 0, y - b.bottom);
    return Math.hypot(dx, dy) < LEAST / 2;
  };
  const found = targets.filter(
    ({ each, box }) =>
      (box.width < LEAST - 0.5 || box.height < LEAST - 0.5) &&
      !inSentence(each) &&
      targets.some(
        (other) =>
          other.each !== each && !each.contains(other.each) && !other.each.contains(each) && near(box, other.box),
      ),
  );
  return found.map(
    ({ each, box }) => `${each.outerHTML.slice(0, 120)} ${box.width.toFixed(0)}×${box.height.toFixed(0)}`,
  );
}
