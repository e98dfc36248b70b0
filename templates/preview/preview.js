// Loads a page of the preview again when the packet was built anew. A page in the background asks nothing,
// so that many open pages don't use up the few connections a browser grants one address.
"use strict";

(() => {
  const PAUSE_MS = 1000;
  const seen = document.currentScript.dataset.state;

  const pause = () => new Promise((resolve) => setTimeout(resolve, PAUSE_MS));

  const looked = () =>
    new Promise((resolve) => {
      if (!document.hidden) resolve();
      else document.addEventListener("visibilitychange", () => resolve(), { once: true });
    });

  const changed = async () => {
    try {
      const answer = await fetch(`/.preview/state?seen=${encodeURIComponent(seen)}`, { cache: "no-store" });
      if (answer.ok) return (await answer.text()) !== seen;
    } catch {
      // The program was stopped; it may be started again.
    }
    await pause();
    return false;
  };

  (async () => {
    do await looked();
    while (!(await changed()));
    location.reload();
  })();
})();
