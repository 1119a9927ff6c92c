/** What an act takes away is gone some frames after it, when the screen has been drawn anew. */
const FRAMES = 12;

/**
 * Where what had the focus is gone after an act, the next Tab goes on from here and not from the top of the page.
 *
 * @param id Of an element that can take the focus; without it, or where it does not come, the screen's heading does.
 */
export function focusIfLost(id?: string, frames = FRAMES): void {
  requestAnimationFrame(() => {
    const isLost = document.activeElement === document.body;
    const place = id === undefined ? document.querySelector("h1") : document.getElementById(id);
    if (frames > 1 && (!isLost || place === null)) focusIfLost(id, frames - 1);
    else if (isLost) (place ?? document.querySelector("h1"))?.focus({ preventScroll: true });
  });
}
