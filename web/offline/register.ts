/** Has the browser keep the screens, once the first one stands. Browsers allow it over HTTPS and on this machine itself. */
export function keepScreens(): void {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  window.addEventListener("load", () => {
    // Without it everything works as long as there is signal, so a refusal is no fault to show.
    navigator.serviceWorker.register("/sw.js").catch(() => undefined);
  });
}
