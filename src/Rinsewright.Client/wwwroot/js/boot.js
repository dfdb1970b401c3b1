// Runs before the first paint: theme and language from what this device remembers; the service worker; news of an update.
(() => {
  const root = document.documentElement;
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const remembered = () => {
    try {
      return JSON.parse(localStorage.getItem("rinsewright.settings")) ?? {};
    } catch {
      return {};
    }
  };
  const apply = (settings) => {
    const theme = settings.theme ?? "system";
    root.dataset.theme = theme === "light" || theme === "dark" ? theme : dark.matches ? "dark" : "light";
    root.lang = settings.language ?? (navigator.language.toLowerCase().startsWith("es") ? "es" : "en");
  };
  apply(remembered());
  dark.addEventListener("change", () => apply(remembered()));
  // Whether a page was closed before it had written everything (device.js).
  const left = () => {
    try {
      return Object.keys(localStorage).some((name) => name.startsWith("rinsewright.left-"));
    } catch {
      return false;
    }
  };
  globalThis.rinsewright = { apply, left, update: null };

  if (!("serviceWorker" in navigator)) return;
  const hadController = !!navigator.serviceWorker.controller;
  const announce = (worker) => {
    globalThis.rinsewright.update = worker;
    dispatchEvent(new Event("rinsewright-update"));
  };
  navigator.serviceWorker.register("service-worker.js", { updateViaCache: "none" }).then((registration) => {
    if (!registration) return; // a browser that forbids it answers with nothing
    if (registration.waiting && hadController) announce(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker.addEventListener("statechange", () => {
        if (worker.state === "installed" && navigator.serviceWorker.controller) announce(worker);
      });
    });
  }, () => {});
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (hadController) location.reload();
  });
})();
