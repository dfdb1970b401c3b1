// Accounts: questions to the office, and passkeys, whose secrets only the browser knows.
export async function ask(method, path, body, language) {
  try {
    const headers = { "accept-language": language };
    if (body !== null) headers["content-type"] = "application/json";
    const response = await fetch(path, { method, headers, body, signal: AbortSignal.timeout(60000) });
    return { status: response.status, text: await response.text() };
  } catch {
    return { status: 0, text: "" };
  }
}

// "yes"; "address": a browser takes a passkey only under a name, not under a number; "insecure": only over HTTPS; "none": this browser knows none.
export function passkeysHere() {
  if (!isSecureContext) return "insecure";
  if (/^[\d.]+$|^\[/.test(location.hostname)) return "address";
  return globalThis.PublicKeyCredential?.parseCreationOptionsFromJSON && PublicKeyCredential.prototype.toJSON ? "yes" : "none";
}

// The person may say no; that is no failure worth more than a word.
async function answered(act) {
  try {
    return JSON.stringify((await act()).toJSON());
  } catch {
    return null;
  }
}

export function makePasskey(options) {
  return answered(() => navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(JSON.parse(options)) }));
}

export function usePasskey(options) {
  return answered(() => navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(JSON.parse(options)) }));
}

export async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
