/**
 * Where what had the focus is gone after an act, the next Tab goes on from here and not from the top of the page.
 *
 * @param id Of an element that can take the focus; without it, the screen's heading does.
 */
export function focusIfLost(id?: string): void {
  requestAnimationFrame(() => {
    if (document.activeElement !== document.body) return;
    const place = (id === undefined ? null : document.getElementById(id)) ?? document.querySelector("h1");
    place?.focus({ preventScroll: true });
  });
}
