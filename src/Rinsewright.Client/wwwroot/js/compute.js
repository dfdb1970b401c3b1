// The page's end of the compute worker: one worker, one run at a time, cancelled by ending it.
import { blob } from "./files.js";

let worker;
let ready;
let running;

function start() {
  if (ready) return ready;
  worker = new Worker(new URL("./compute-worker.js", import.meta.url), { type: "module" });
  ready = new Promise((done, fail) => {
    worker.onerror = (event) => fail(new Error(event.message || "worker"));
    worker.onmessage = ({ data }) => {
      if (data.ready) done();
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

export function cancel() {
  const was = running;
  running = undefined;
  stop();
  was?.resolve(null);
}
