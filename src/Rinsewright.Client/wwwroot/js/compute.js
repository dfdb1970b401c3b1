// The page's end of the compute worker: one worker, one run at a time, cancelled by ending it.
import { blob } from "./files.js";

let worker;
let ready;
let running;
let count = 0;
const machines = new Map();

function start() {
  if (ready) return ready;
  worker = new Worker(new URL("./compute-worker.js", import.meta.url), { type: "module" });
  ready = new Promise((done, fail) => {
    worker.onerror = (event) => fail(new Error(event.message || "worker"));
    worker.onmessage = ({ data }) => {
      if (data.ready) done();
      else if (data.machine !== undefined) {
        const { resolve, reject } = machines.get(data.machine);
        machines.delete(data.machine);
        if (data.error) reject(new Error(data.error));
        else resolve(data.answer);
      }
      else if (data.progress) running?.page.invokeMethodAsync("OnProgress", data.progress[0], data.progress[1], data.progress[2]);
      else if (running) {
        const { resolve, reject } = running;
        running = undefined;
        if (data.error) reject(new Error(data.error));
        else resolve(data.answer);
      } else if (data.error) fail(new Error(data.error));
    };
  });
  ready.catch(() => stop());
  return ready;
}

function stop() {
  worker?.terminate();
  for (const { reject } of machines.values()) reject(new Error("stopped"));
  machines.clear();
  worker = ready = undefined;
}

export function warm() {
  start().catch(() => {});
}

// Answers with JSON; null where it was cancelled, "missing" where the file is not on this device and not to be had.
export async function run(requestJson, sha256, name, page) {
  const file = await blob(sha256);
  if (!file) return "missing";
  await start();
  return await new Promise((resolve, reject) => {
    running = { resolve, reject, page };
    worker.onerror = (event) => {
      running = undefined;
      stop();
      reject(new Error(event.message || "worker"));
    };
    worker.postMessage({ request: requestJson, file, name });
  });
}

// Runs a machine; several may wait, each gets its own answer.
export async function machine(askJson) {
  await start();
  return await new Promise((resolve, reject) => {
    const id = count++;
    machines.set(id, { resolve, reject });
    worker.postMessage({ machine: id, ask: askJson });
  });
}

export function cancel() {
  const was = running;
  running = undefined;
  stop();
  was?.resolve(null);
}
