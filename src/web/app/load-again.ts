// Loads the page again, once: what fails right after that is not mended by it.

const key = 'levare.loaded-again';
const pause = 10_000;

/** False when that was done just now, or when the browser cannot remember that it was. */
export function loadAgain(): boolean {
  try {
    const before = Number(sessionStorage.getItem(key) ?? 0);
    if (Date.now() - before < pause) return false;
    sessionStorage.setItem(key, String(Date.now()));
  } catch {
    return false;
  }
  window.location.reload();
  return true;
}
