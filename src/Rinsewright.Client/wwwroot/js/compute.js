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
// It runs from the first moment: cancelled while the file is fetched or the worker starts, it ends all the same.
export function run(requestJson, sha256, name, page) {
  return new Promise((resolve, reject) => {
    const mine = (running = { resolve, reject, page });
    ask(mine, requestJson, sha256, name).catch((error) => {
      if (running === mine) running = undefined;
      reject(error);
    });
  });
}

async function ask(mine, requestJson, sha256, name) {
  const file = await blob(sha256);
  if (running !== mine) return;
  if (!file) {
    running = undefined;
    mine.resolve("missing");
    return;
  }
  await start();
  if (running !== mine) return;
  worker.onerror = (event) => {
    running = undefined;
    stop();
    mine.reject(new Error(event.message || "worker"));
  };
  worker.postMessage({ request: requestJson, file, name });
}

export function cancel() {
  const was = running;
  running = undefined;
  stop();
  was?.resolve(null);
}
