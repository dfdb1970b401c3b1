// Hands on a chart: width, pointer, drag, pinch, wheel, and keys kept from scrolling the page. What they mean is decided in the page.
const keys = new Set(["ArrowLeft", "ArrowRight", "PageUp", "PageDown", "Home", "End", "+", "-", "=", "Escape"]);

export function attach(host, page) {
  const pointers = new Map();
  let moved = false;
  let last = 0;
  let queued = null;
  const tell = (name, ...values) => {
    queued = [name, values];
    if (last) return;
    last = requestAnimationFrame(() => {
      last = 0;
      const [n, v] = queued;
      page.invokeMethodAsync(n, ...v).catch(() => {});
    });
  };
  const at = (event) => event.clientX - host.getBoundingClientRect().left;
  const spread = () => {
    const [a, b] = [...pointers.values()];
    return { middle: (a.x + b.x) / 2, width: Math.max(24, Math.abs(a.x - b.x)) };
  };
  let grip = null;

  const resize = new ResizeObserver(() => page.invokeMethodAsync("OnWidth", host.clientWidth).catch(() => {}));
  resize.observe(host);
  host.addEventListener("keydown", (event) => {
    if (keys.has(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey) event.preventDefault();
  });
  host.addEventListener("pointerdown", (event) => {
    pointers.set(event.pointerId, { x: at(event), from: at(event) });
    moved = false;
    if (pointers.size === 2) {
      grip = spread();
      page.invokeMethodAsync("OnGrip").catch(() => {});
    }
    if (event.pointerType !== "touch") host.setPointerCapture(event.pointerId);
  });
  host.addEventListener("pointermove", (event) => {
    const pointer = pointers.get(event.pointerId);
    const x = at(event);
    if (!pointer) {
      if (event.pointerType !== "touch") tell("OnPoint", x);
      return;
    }
    pointer.x = x;
    if (pointers.size === 2 && grip) {
      const now = spread();
      tell("OnPinch", grip.middle, now.middle, now.width / grip.width);
      moved = true;
    } else if (pointers.size === 1 && Math.abs(x - pointer.from) > 6) {
      moved = true;
      tell("OnDrag", pointer.from, x);
    }
  });
  const up = (event) => {
    const pointer = pointers.get(event.pointerId);
    pointers.delete(event.pointerId);
    grip = null;
    if (pointer && !moved && event.type === "pointerup") tell("OnTap", at(event));
    if (pointers.size === 0) page.invokeMethodAsync("OnRelease").catch(() => {});
  };
  host.addEventListener("pointerup", up);
  host.addEventListener("pointercancel", up);
  host.addEventListener("pointerleave", (event) => {
    if (event.pointerType !== "touch" && pointers.size === 0) tell("OnLeave");
  });
  host.addEventListener(
    "wheel",
    (event) => {
      if (!event.ctrlKey && !event.shiftKey) return;
      event.preventDefault();
      tell("OnWheel", at(event), event.deltaY || event.deltaX);
    },
    { passive: false },
  );
  return { dispose: () => resize.disconnect() };
}
