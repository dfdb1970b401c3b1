// Hands on the section: its width, a tap, and keys kept from scrolling the page. What they mean is decided in the page.
const keys = new Set(["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "Enter", " "]);

export function attach(host, page) {
  const resize = new ResizeObserver(() => page.invokeMethodAsync("OnWidth", host.clientWidth).catch(() => {}));
  resize.observe(host);
  const key = (event) => {
    if (keys.has(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey) event.preventDefault();
  };
  const tap = (event) => {
    const svg = host.querySelector("svg.section");
    if (!svg) return;
    const box = svg.getBoundingClientRect();
    page.invokeMethodAsync("OnTap", event.clientX - box.left, event.clientY - box.top).catch(() => {});
  };
  host.addEventListener("keydown", key);
  host.addEventListener("click", tap);
  return {
    show(x) {
      const middle = x - host.clientWidth / 2;
      const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
      if (x < host.scrollLeft + 40 || x > host.scrollLeft + host.clientWidth - 40) host.scrollTo({ left: middle, behavior: calm ? "auto" : "smooth" });
    },
    detach() {
      resize.disconnect();
      host.removeEventListener("keydown", key);
      host.removeEventListener("click", tap);
    },
  };
}
