// The device's own store. A document, its line in the list and its operation are written in one transaction, or not at all.
import { index, putLine, wait } from "./lines.js";

const finished = (transaction) =>
  new Promise((done, fail) => {
    transaction.oncomplete = () => done();
    transaction.onabort = transaction.onerror = () => fail(transaction.error);
  });

// Remembered beside the store: a store that is made anew although there was one has been cleared, and the person is told.
const known = "rinsewright.store";
function remembered(value) {
  try {
    if (value) localStorage.setItem(known, value);
    return localStorage.getItem(known);
  } catch {
    return null;
  }
}

let opening;
function open() {
  return (opening ??= new Promise((done, fail) => {
    const request = indexedDB.open("rinsewright", 3);
    request.onupgradeneeded = ({ oldVersion }) => {
      const db = request.result;
      if (oldVersion < 1) {
        db.createObjectStore("docs", { keyPath: "id" });
        db.createObjectStore("list", { keyPath: "id" });
        db.createObjectStore("outbox", { keyPath: "seq", autoIncrement: true }).createIndex("document", "documentId");
        db.createObjectStore("files", { keyPath: "sha256" });
        const marks = db.createObjectStore("marks", { keyPath: "id" });
        if (remembered()) marks.put({ id: "cleared", value: "1" });
      }
      index(request.transaction, oldVersion);
    };
    request.onsuccess = () => {
      const db = request.result;
      remembered("1");
      db.onversionchange = () => {
        db.close();
        opening = undefined;
      };
      // Some browsers close it by themselves when the page was long away: the next use opens it again.
      db.onclose = () => {
        opening = undefined;
      };
      done(db);
    };
    request.onerror = () => fail(request.error);
  }).catch((error) => {
    opening = undefined; // asked again the next time: it may be allowed by then
    throw error;
  }));
}

const strict = { durability: "strict" };
const longestList = 2000000; // characters of operations sent at once: what the office takes, with room for those that take more than a byte

// An operation that is not on its way yet is replaced by the next one of the same document by the same person: what is sent is what was last saved.
async function replaceWaiting(outbox, operation) {
  const waiting = await wait(outbox.index("document").getAll(operation.documentId));
  for (const entry of waiting) if (!entry.sending && entry.operation.account === operation.account) outbox.delete(entry.seq);
  outbox.add({ documentId: operation.documentId, sending: false, operation });
}

export async function save(id, lineJson, documentJson, operationJson) {
  const db = await open();
  const transaction = db.transaction(["docs", "list", "outbox"], "readwrite", strict);
  const done = finished(transaction);
  transaction.objectStore("docs").put({ id, json: documentJson });
  await putLine(transaction.objectStore("list"), id, JSON.parse(lineJson));
  if (operationJson) await replaceWaiting(transaction.objectStore("outbox"), JSON.parse(operationJson));
  await done;
}

export async function remove(id, operationJson) {
  const db = await open();
  const transaction = db.transaction(["docs", "list", "outbox"], "readwrite", strict);
  const done = finished(transaction);
  transaction.objectStore("docs").delete(id);
  await putLine(transaction.objectStore("list"), id);
  if (operationJson) await replaceWaiting(transaction.objectStore("outbox"), JSON.parse(operationJson));
  await done;
}

export async function read(id) {
  const db = await open();
  return (await wait(db.transaction("docs").objectStore("docs").get(id)))?.json ?? null;
}

export async function list(kind) {
  const db = await open();
  return JSON.stringify(await wait(db.transaction("list").objectStore("list").index("kind").getAll(kind)));
}

const visitLine = ({ id, name, about, machine, at, kitchen, deleted }) => ({ id, name, about, machine, at, kitchen, deleted });

export async function lastVisits() {
  const db = await open();
  return JSON.stringify((await wait(db.transaction("list").objectStore("list").index("last").getAll())).map(visitLine));
}

export async function dayLines(until, standings, named) {
  const db = await open();
  const list = db.transaction("list").objectStore("list");
  const [kitchens, lasts] = await Promise.all([wait(list.index("kind").getAll("kitchen")), wait(list.index("last").getAll())]);
  const wanted = new Set(named);
  for (const { about, kitchen } of lasts) if (standings.includes(about?.toLowerCase())) wanted.add(kitchen);
  const due = kitchens.filter(({ id, open, nextVisit }) => open || nextVisit <= until || wanted.has(id));
  const parts = await Promise.all(due.map(({ id }) => wait(list.index("partsOf").getAll(id))));
  return [due, lasts.filter(({ kitchen }) => wanted.has(kitchen)).map(visitLine), parts.flat()].map((lines) => JSON.stringify(lines));
}

// A document of fields with the last operation on it that has not left: that one may still be replaced.
export async function readForChange(id) {
  const db = await open();
  const transaction = db.transaction(["docs", "outbox"]);
  const document = wait(transaction.objectStore("docs").get(id));
  const waiting = wait(transaction.objectStore("outbox").index("document").getAll(id));
  const last = (await waiting).at(-1);
  return [(await document)?.json ?? "", last && !last.sending && !last.refused ? JSON.stringify(last.operation) : ""];
}

// Writes only where the document is still what was read, and what is replaced is still here: another tab may have been faster.
export async function change(id, expected, lineJson, documentJson, operationJson, replaces) {
  const db = await open();
  const transaction = db.transaction(["docs", "list", "outbox"], "readwrite", strict);
  const done = finished(transaction);
  const docs = transaction.objectStore("docs");
  const outbox = transaction.objectStore("outbox");
  const waiting = wait(outbox.index("document").getAll(id));
  const same = ((await wait(docs.get(id)))?.json ?? "") === expected;
  const draft = replaces ? (await waiting).find((entry) => entry.operation.id === replaces && !entry.sending && !entry.refused) : null;
  const good = same && (!replaces || draft);
  if (good) {
    docs.put({ id, json: documentJson });
    await putLine(transaction.objectStore("list"), id, JSON.parse(lineJson));
    if (draft) outbox.delete(draft.seq);
    if (operationJson) outbox.add({ documentId: id, sending: false, operation: JSON.parse(operationJson) });
  }
  await done;
  return !!good;
}

export async function waiting() {
  const db = await open();
  return await wait(db.transaction("outbox").objectStore("outbox").count());
}

// Marks the next operations as on their way, so that a change made meanwhile queues behind them instead of replacing them. What the office has refused
// waits until it is asked for again or a later save takes its place. Small ones go many at once; a list stays small enough for a poor line.
export async function take(most) {
  const db = await open();
  const transaction = db.transaction("outbox", "readwrite", strict);
  const done = finished(transaction);
  const outbox = transaction.objectStore("outbox");
  const texts = [];
  let length = 0;
  for (const entry of await wait(outbox.getAll())) {
    if (entry.refused) continue;
    const text = JSON.stringify(entry.operation);
    if (texts.length === most || (texts.length && length + text.length > longestList)) break;
    length += text.length;
    texts.push(text);
    outbox.put({ ...entry, sending: true });
  }
  await done;
  return "[" + texts.join(",") + "]";
}

export async function settle(operationIds, mark, word) {
  const gone = new Set(operationIds);
  const db = await open();
  const transaction = db.transaction(["outbox", "marks"], "readwrite", strict);
  const done = finished(transaction);
  const outbox = transaction.objectStore("outbox");
  for (const entry of await wait(outbox.getAll())) if (gone.has(entry.operation.id)) outbox.delete(entry.seq);
  if (word) {
    const marks = transaction.objectStore("marks");
    const words = (await wait(marks.get(mark)))?.value;
    marks.put({ id: mark, value: words ? words + " " + word : word });
  }
  await done;
}

// Of the words that were seen one stays, with what came since.
export async function trim(mark, seen, keep) {
  const db = await open();
  const transaction = db.transaction("marks", "readwrite", strict);
  const done = finished(transaction);
  const marks = transaction.objectStore("marks");
  const words = (await wait(marks.get(mark)))?.value ?? "";
  if (seen && (words + " ").startsWith(seen + " ")) marks.put({ id: mark, value: keep + words.slice(seen.length) });
  await done;
}

// Keeps refused operations with the reason: nothing entered is lost.
export async function refuse(reasonsJson) {
  const reasons = JSON.parse(reasonsJson);
  const db = await open();
  const transaction = db.transaction("outbox", "readwrite", strict);
  const done = finished(transaction);
  const outbox = transaction.objectStore("outbox");
  const entries = await wait(outbox.getAll());
  const last = new Map(entries.map((entry) => [entry.documentId, entry.seq]));
  for (const entry of entries) {
    const reason = reasons[entry.operation.id];
    if (reason === undefined) continue;
    // A later save of the whole document waits behind it: that one goes next, this one has been replaced. Of fields each is kept.
    if (!entry.operation.fields && last.get(entry.documentId) !== entry.seq) outbox.delete(entry.seq);
    else outbox.put({ ...entry, sending: false, refused: reason || "?" });
  }
  await done;
}

// The reasons of what was refused; again: lets it be sent once more.
export async function refused(again) {
  const db = await open();
  const transaction = db.transaction("outbox", "readwrite", strict);
  const done = finished(transaction);
  const outbox = transaction.objectStore("outbox");
  const entries = (await wait(outbox.getAll())).filter((entry) => entry.refused);
  if (again) for (const { refused: _, ...entry } of entries) outbox.put(entry);
  await done;
  return entries.map((entry) => entry.refused);
}

// A page of what the office has, each unless a change made here still waits, with the place reached: one transaction, so that no change can slip in between, and no page that another tab has overtaken.
export async function takeOver(page, from, to) {
  const db = await open();
  const transaction = db.transaction(["docs", "list", "outbox", "marks"], "readwrite", strict);
  const done = finished(transaction);
  const [docs, list, outbox, marks] = ["docs", "list", "outbox", "marks"].map((name) => transaction.objectStore(name));
  const same = ((await wait(marks.get("cursor")))?.value ?? "") === from;
  if (same) {
    for (const [id, line, json] of page) {
      if (await wait(outbox.index("document").count(id))) continue;
      if (json) docs.put({ id, json });
      else docs.delete(id);
      await putLine(list, id, line && JSON.parse(line));
    }
    marks.put({ id: "cursor", value: to });
  }
  await done;
  return same;
}

export async function mark(id, value) {
  const db = await open();
  if (value === undefined || value === null) return (await wait(db.transaction("marks").objectStore("marks").get(id)))?.value ?? null;
  const transaction = db.transaction("marks", "readwrite");
  const done = finished(transaction);
  transaction.objectStore("marks").put({ id, value });
  await done;
  return value;
}

// The day that first.js shows at the next start; one that was read before the copies went is not kept after it.
let forgotten = 0;
export const dayRound = () => forgotten;
export function keepDay(json, round) {
  if (round === forgotten) localStorage.setItem("rinsewright.day", json);
}

// The office's copies go from this device: documents, their lines, the place in the list of changes. What waits to be sent stays, and so do files.
export async function forget() {
  forgotten++;
  try {
    localStorage.removeItem("rinsewright.day"); // what first.js shows of them
  } catch {} // refused: then nothing was kept there
  const db = await open();
  const transaction = db.transaction(["docs", "list", "marks"], "readwrite", strict);
  const done = finished(transaction);
  transaction.objectStore("docs").clear();
  transaction.objectStore("list").clear();
  transaction.objectStore("marks").delete("cursor");
  transaction.objectStore("marks").delete(IDBKeyRange.bound("unjudged-", "unjudged-~"));
  await done;
}

export async function keepFile(file) {
  const db = await open();
  const known = await wait(db.transaction("files").objectStore("files").get(file.sha256));
  if (known) return;
  const transaction = db.transaction("files", "readwrite", strict);
  const done = finished(transaction);
  transaction.objectStore("files").put(file);
  await done;
}

export async function file(sha256) {
  const db = await open();
  return (await wait(db.transaction("files").objectStore("files").get(sha256))) ?? null;
}

export async function unsentFiles() {
  const db = await open();
  const all = await wait(db.transaction("files").objectStore("files").getAll());
  return all.filter((f) => !f.sent).map((f) => f.sha256);
}

export async function fileSent(sha256) {
  const db = await open();
  const transaction = db.transaction("files", "readwrite", strict);
  const done = finished(transaction);
  const files = transaction.objectStore("files");
  const entry = await wait(files.get(sha256));
  if (entry) files.put({ ...entry, sent: true });
  await done;
}

// Queues what stands here already, for an office that lost it.
export async function queue(documentId, operationJson, expected) {
  const operation = JSON.parse(operationJson);
  const db = await open();
  const transaction = db.transaction(["docs", "outbox"], "readwrite", strict);
  const done = finished(transaction);
  const outbox = transaction.objectStore("outbox");
  const same = (await wait(transaction.objectStore("docs").get(documentId)))?.json === expected;
  const waiting = await wait(outbox.index("document").getAll(documentId));
  const wanted = same && (operation.fields ? !waiting.some((entry) => entry.operation.id === operation.id) : waiting.length === 0);
  if (wanted) outbox.add({ documentId, sending: true, operation });
  await done;
  return same ? wanted : null;
}

export async function forgetSentFiles(only) {
  const db = await open();
  const transaction = db.transaction("files", "readwrite", strict);
  const done = finished(transaction);
  const files = transaction.objectStore("files");
  const kept = only ? await Promise.all(only.map((name) => wait(files.get(name)))) : await wait(files.getAll());
  const sent = kept.filter((entry) => entry?.sent);
  for (const entry of sent) files.put({ ...entry, sent: false });
  await done;
  return sent.length > 0;
}

export async function everything() {
  const db = await open();
  const transaction = db.transaction(["docs", "files", "marks"]);
  const docs = await wait(transaction.objectStore("docs").getAll());
  const files = await wait(transaction.objectStore("files").getAll());
  const photographs = await wait(transaction.objectStore("marks").getAll(IDBKeyRange.bound("photograph-", "photograph-~")));
  return { docs: docs.map((d) => d.json), files, photographs: photographs.filter((p) => p.value) };
}
