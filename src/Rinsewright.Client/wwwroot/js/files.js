// Logger files: dropped, picked or the demo; kept by their content before anything else happens with them.
import * as store from "./store.js";

const keepAtMost = 64 * 1024 * 1024;
const held = new Map();

async function hash(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((b) => b.toString(16).padStart(2, "0")).join("");
}

function hold(file) {
  const id = "held-" + crypto.randomUUID();
  held.set(id, file);
  return { sha256: id, name: file.name, size: file.size, kept: false };
}

// A file too large to keep, or one the device has no room for, is judged from where it lies, and is gone with the page.
async function take(file) {
  if (file.size > keepAtMost) return hold(file);
  const bytes = await file.arrayBuffer();
  const sha256 = await hash(bytes);
  try {
    await store.keepFile({ sha256, name: file.name, size: file.size, blob: new Blob([bytes]), sent: false });
  } catch {
    return hold(file);
  }
  return { sha256, name: file.name, size: file.size, kept: true };
}

async function takeAll(list, page) {
  const taken = [];
  for (const file of list) {
    try {
      taken.push(await take(file));
    } catch {
      // A folder, or a file that went away while it was dropped.
      taken.push({ sha256: "", name: file.name, size: file.size, kept: false });
    }
  }
  if (taken.length) await page.invokeMethodAsync("OnFiles", JSON.stringify(taken));
}

export function attach(zone, input, page) {
  const over = (on) => zone.classList.toggle("over", on);
  const stop = (event) => {
    event.preventDefault();
    event.stopPropagation();
  };
  zone.addEventListener("dragenter", (event) => (stop(event), over(true)));
  zone.addEventListener("dragover", (event) => (stop(event), over(true)));
  zone.addEventListener("dragleave", (event) => {
    if (!zone.contains(event.relatedTarget)) over(false);
  });
  zone.addEventListener("drop", async (event) => {
    stop(event);
    over(false);
    await takeAll([...event.dataTransfer.files], page);
  });
  input.addEventListener("change", async () => {
    const files = [...input.files];
    input.value = "";
    await takeAll(files, page);
  });
}

export function pick(input) {
  input.click();
}

// Bytes that come with the program, kept like any other file.
export async function keep(bytes, name) {
  return JSON.stringify(await take(new File([bytes], name)));
}

export async function blob(sha256) {
  return held.get(sha256) ?? (await store.file(sha256))?.blob ?? (await fromOffice(sha256));
}

// A photograph kept here, or where asked for at the office, as an address of its own; null where it is to be had at neither.
export async function picture(sha256, ask) {
  const kept = ask ? await blob(sha256) : (await store.file(sha256))?.blob;
  if (!kept) return null;
  return await new Promise((done) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result).replace(/^data:[^;,]*/, "data:image/jpeg"));
    reader.onerror = () => done(null);
    reader.readAsDataURL(kept);
  });
}

export function kept(sha256) {
  return !held.has(sha256);
}

// A proof made on another device: its file is at the office. Taken only if it still is what its name says.
async function fromOffice(sha256) {
  if (!/^[0-9a-f]{64}$/.test(sha256)) return null;
  try {
    const response = await fetch("api/files/" + sha256, { signal: AbortSignal.timeout(60000) });
    if (!response.ok) return null;
    const bytes = await response.arrayBuffer();
    if ((await hash(bytes)) !== sha256) return null;
    const found = new Blob([bytes]);
    await store.keepFile({ sha256, name: sha256, size: found.size, blob: found, sent: true });
    return found;
  } catch {
    return null;
  }
}

// The whole device in a file, and back. Files travel as base64 beside the documents. A phone must be able to read it again in one piece: what goes beyond that is
// left for the next part, a file like the first without its documents.
const partAtMost = 100e6;

function parts(files) {
  const all = [[]];
  let size = 0;
  for (const f of files) {
    if (size && size + f.size * 4 / 3 > partAtMost) {
      all.push([]);
      size = 0;
    }
    size += f.size * 4 / 3;
    all.at(-1).push(f);
  }
  return all;
}

export async function exportPart(head, part) {
  const { docs, files, photographs } = await store.everything();
  const all = parts(files);
  const pieces = [head.slice(0, -1), ',"documents":[', part ? "" : docs.join(","), '],"photographs":', part ? "[]" : JSON.stringify(photographs), ',"files":['];
  for (const [i, f] of all[part].entries()) {
    const bytes = new Uint8Array(await f.blob.arrayBuffer());
    let text = "";
    for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    pieces.push(i ? "," : "", new Blob([JSON.stringify({ sha256: f.sha256, name: f.name, size: f.size, base64: btoa(text) })]));
  }
  pieces.push("]}");
  return { blob: new Blob(pieces, { type: "application/json" }), count: all.length };
}

// Hands over one part, the first is 0; answers how many there are.
export async function download(head, name, part) {
  const { blob, count } = await exportPart(head, part);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = count > 1 ? name.replace(".json", `-${part + 1}.json`) : name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 120000);
  return count;
}

// Returns the documents as text; files are checked against their own name before they are kept.
export async function importFrom(input) {
  const file = input.files[0];
  input.value = "";
  if (!file) return null;
  let backup;
  try {
    backup = JSON.parse(await file.text());
  } catch (e) {
    return JSON.stringify({ schema: e instanceof SyntaxError ? "" : "unread", documents: [], files: 0, refused: 0 });
  }
  let files = 0;
  let refused = 0;
  for (const f of backup.files ?? []) {
    try {
      const bytes = Uint8Array.from(atob(f.base64), (c) => c.charCodeAt(0));
      if ((await hash(bytes)) !== f.sha256) throw new Error("hash");
      await store.keepFile({ sha256: f.sha256, name: String(f.name), size: bytes.length, blob: new Blob([bytes]), sent: false });
      files++;
    } catch {
      refused++;
    }
  }
  // Photographs of plates that an earlier program kept beside the machines; one that lies here stays.
  for (const p of backup.photographs ?? []) {
    try {
      if (!/^photograph-[0-9a-f-]{36}$/.test(p.id) || !/^data:image\//.test(p.value)) throw new Error("photograph");
      if (!(await store.mark(p.id))) await store.mark(p.id, p.value);
      files++;
    } catch {
      refused++;
    }
  }
  return JSON.stringify({ schema: String(backup.schema), documents: (backup.documents ?? []).map((d) => JSON.stringify(d)), files, refused });
}
