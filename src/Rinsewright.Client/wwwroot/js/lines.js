// The lines of the list, one for each document, and what they are found by.
export const wait = (request) =>
  new Promise((done, fail) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });

// One after the other: each writes whole lines.
export async function index(transaction, oldVersion) {
  const list = transaction.objectStore("list");
  if (oldVersion < 2) await indexLines(list);
  if (oldVersion < 3) await indexParts(list, transaction.objectStore("docs"));
}

// Visits that told of parts are found by their kitchen without reading the others. A line that came before gets them from its document.
async function indexParts(list, docs) {
  list.createIndex("partsOf", "partsOf");
  // Some hundred at once: one by one it takes minutes where there are thousands.
  for (let some, from; (some = await wait(docs.getAll(from, 300))).length; from = IDBKeyRange.lowerBound(some.at(-1).id, true)) {
    for (const { id, json } of some) {
      const parts = json.includes('"record.partsUsed"') && JSON.parse(json).fields?.["record.partsUsed"]?.value;
      const line = parts && (await wait(list.get(id)));
      if (line) list.put({ ...line, parts, partsOf: line.kitchen });
    }
  }
}

// Lines of one kind, visits of one machine, and the few visits that say how machines stand are found without reading the others. A line that came before there were indexes gets what they need.
async function indexLines(list) {
  list.createIndex("kind", "kind");
  list.createIndex("machine", "machine");
  list.createIndex("last", "last");
  const machines = new Map();
  for (const line of await wait(list.getAll())) {
    const to = named(line);
    if (to.kind !== line.kind || to.last !== line.last) list.put(to);
    if (!line.machine) continue;
    if (!machines.has(line.machine)) machines.set(line.machine, []);
    machines.get(line.machine).push(to);
  }
  for (const lines of machines.values()) markLasts(list, lines);
}

// A proof's line does not name its kind. A visit of no machine has no others to be the last of.
function named(line) {
  const { last: _, ...rest } = line;
  return rest.kind === "visit" && !rest.machine ? { ...rest, last: 1 } : { ...rest, kind: rest.kind ?? "proof" };
}

// What a visit can leave a machine as, in small letters; one with another word was not judged.
const proved = ["stopuse", "notsanitary", "watch", "sanitary"];
const nothingProved = "notproved";

// Of one machine the last visit that was judged, and where nothing was proved on it the last before it on which something was: no other says how it stands. Apart by name and kitchen, because a proof
// may know no more than the name, and a machine can have been moved.
async function tellLasts(list, machine) {
  markLasts(list, await wait(list.index("machine").getAll(machine)));
}

function markLasts(list, lines) {
  const found = new Map();
  for (const line of lines) {
    const word = line.about?.toLowerCase();
    if (line.deleted || !line.at || !(proved.includes(word) || word === nothingProved)) continue;
    for (const what of word === nothingProved ? ["judged"] : ["judged", "proved"]) {
      const key = JSON.stringify([what, line.kitchen, line.name]);
      const best = found.get(key);
      if (!best || Date.parse(line.at) > Date.parse(best.at)) found.set(key, line);
    }
  }
  const lasts = new Set(found.values());
  for (const line of lines) {
    const { last, ...rest } = line;
    if (lasts.has(line) !== !!last) list.put(lasts.has(line) ? { ...rest, last: 1 } : rest);
  }
}

// Every change of the list goes through here, in the transaction of its document.
export async function putLine(list, id, line) {
  const before = await wait(list.get(id));
  if (line) list.put(named({ ...line, id }));
  else list.delete(id);
  for (const machine of new Set([before?.machine, line?.machine])) if (machine) await tellLasts(list, machine);
}
