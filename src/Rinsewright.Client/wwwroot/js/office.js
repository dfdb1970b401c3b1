// The office: operations go out once, files by their content, changes come back. No answer is no error: the work waits.
import * as store from "./store.js";

async function reach(path, options) {
  try {
    const response = await fetch(path, { ...options, signal: AbortSignal.timeout(60000) });
    return { status: response.status, text: await response.text() };
  } catch {
    return { status: 0, text: "" };
  }
}

export async function send(operationsJson, language) {
  return await reach("api/operations", {
    method: "POST",
    headers: { "content-type": "application/json", "accept-language": language },
    body: operationsJson,
  });
}

export async function sendFile(sha256) {
  const file = await store.file(sha256);
  if (!file) return 404;
  const answer = await reach("api/files/" + sha256, {
    method: "PUT",
    headers: { "content-type": "application/octet-stream", "x-rinsewright": "1" },
    body: file.blob,
  });
  if (answer.status >= 200 && answer.status < 300) await store.fileSent(sha256);
  return answer.status;
}

export async function changes(cursor, seen) {
  return await reach("api/changes?after=" + encodeURIComponent(cursor) + "&seen=" + encodeURIComponent(seen), {});
}

export async function history(id) {
  return await reach("api/documents/" + id + "/history", {});
}
