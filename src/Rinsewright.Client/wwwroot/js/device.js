// What the page knows of its device: settings, signal, updates, storage, downloads.
const key = "rinsewright.settings";

// A browser may refuse to keep anything: then they last as long as the page.
export function settings() {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function keepSettings(json) {
  try {
    localStorage.setItem(key, json);
  } catch {}
  globalThis.rinsewright?.apply(JSON.parse(json));
}

export function preferredLanguage() {
  return document.documentElement.lang;
}

// What a page that is closed has not written yet, under a name of its own until the next page has written it.
const leftBy = "rinsewright.left-";
const own = leftBy + Math.random();
const others = () => Object.keys(localStorage).filter((name) => name.startsWith(leftBy) && name !== own);

export function left() {
  return others().map((name) => localStorage.getItem(name));
}

export function regained(text) {
  for (const name of others()) if (localStorage.getItem(name) === text) localStorage.removeItem(name);
}

export function listen(page) {
  const leave = (going) => {
    let text;
    try {
      text = going && page.invokeMethod("OnLeaving");
      if (text) localStorage.setItem(own, text);
      else localStorage.removeItem(own);
    } catch {} // refused, or no room
    return text;
  };
  // A page that is only hidden goes on writing: what is written by then is left to nobody, or it would come back over what others write of it later.
  const see = () => {
    if (leave(document.hidden)) setTimeout(see, 1000);
  };
  addEventListener("pagehide", () => leave(true));
  addEventListener("pageshow", () => leave(false));
  const tell = (what) => page.invokeMethodAsync("OnDevice", what);
  addEventListener("online", () => tell("online"));
  addEventListener("offline", () => tell("offline"));
  document.addEventListener("visibilitychange", () => {
    see();
    tell(document.visibilityState);
  });
  addEventListener("rinsewright-update", () => tell("update"));
  if (globalThis.rinsewright?.update) tell("update");
}

export function applyUpdate() {
  globalThis.rinsewright?.update?.postMessage("skipWaiting");
}

export async function storage() {
  const kept = (await navigator.storage?.persisted?.()) ?? false;
  const estimate = (await navigator.storage?.estimate?.()) ?? {};
  return { kept, usage: estimate.usage ?? 0, quota: estimate.quota ?? 0 };
}

export async function askToKeep() {
  return (await navigator.storage?.persist?.()) ?? false;
}

let offered;

// One address for each download or view; released a while after use.
export function offer(bytes, type, name, view) {
  offered = new File([bytes], name, { type });
  const url = URL.createObjectURL(offered);
  const link = document.createElement("a");
  link.href = url;
  if (view) {
    link.target = "_blank";
    link.rel = "noopener";
  } else {
    link.download = name;
  }
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 120000);
}

export function canShare(name) {
  return offered?.name === name && (navigator.canShare?.({ files: [offered] }) ?? false);
}

export async function share(name) {
  if (!canShare(name)) return;
  try {
    await navigator.share({ files: [offered] });
  } catch (error) {
    if (error.name !== "AbortError") offer(offered, offered.type, offered.name, false); // an abort is the person's own
  }
}

export function focus(id) {
  document.getElementById(id)?.focus();
}
