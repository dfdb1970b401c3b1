// Logger files: dropped, picked or the demo; kept by their content before anything else happens with them.
import * as store from "./store.js";

const keepAtMost = 64 * 1024 * 1024;
const held = new Map();

async function hash(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((b) => b.toString(16).padStart(2, "0")).join("");
}

// A file too large to keep is judged from where it lies, and is gone with the page.
async function take(file) {
  if (file.size > keepAtMost) {
    const id = "held-" + crypto.randomUUID();
    held.set(id, file);
    return { sha256: id, name: file.name, size: file.size, kept: false };
  }
  const bytes = await file.arrayBuffer();
  const sha256 = await hash(bytes);
  await store.keepFile({ sha256, name: file.name, size: file.size, blob: new Blob([bytes]), sent: false });
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

// A photograph kept here, as an address of its own; null where it is on another device.
export async function picture(sha256) {
  const kept = (await store.file(sha256))?.blob;
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
    const response = await fetch("api/files/" + sha256);
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

// The whole device in one file, and back. Files travel as base64 beside the documents.
export async function exportAll(head) {
  const { docs, files } = await store.everything();
  const parts = [head.slice(0, -1), ',"documents":[', docs.join(","), '],"files":['];
  for (const [i, f] of files.entries()) {
    const bytes = new Uint8Array(await f.blob.arrayBuffer());
    let text = "";
    for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    parts.push(i ? "," : "", JSON.stringify({ sha256: f.sha256, name: f.name, size: f.size, base64: btoa(text) }));
  }
  parts.push("]}");
  return new Blob(parts, { type: "application/json" });
}

export async function download(head, name) {
  const blob = await exportAll(head);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 120000);
}

// Returns the documents as text; files are checked against their own name before they are kept.
export async function importFrom(input) {
  const file = input.files[0];
  input.value = "";
  if (!file) return null;
  let backup;
  try {
    backup = JSON.parse(await file.text());
  } catch {
    return JSON.stringify({ schema: "", documents: [], files: 0, refused: 0 });
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
  return JSON.stringify({ schema: String(backup.schema), documents: (backup.documents ?? []).map((d) => JSON.stringify(d)), files, refused });
}
