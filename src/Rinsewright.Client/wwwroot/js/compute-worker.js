// A second runtime of the same engine. It reads the file where it lies, a stretch at a time, so that size costs no memory.
import { dotnet } from "../_framework/dotnet.js";

let file;
const reader = new FileReaderSync();

try {
  const { setModuleImports, getAssemblyExports, getConfig } = await dotnet
    .withDiagnosticTracing(false)
    .withModuleConfig({
      // What the first page left for later (workbooks) is at hand here from the start.
      onConfigLoaded: ({ resources }) => {
        resources.assembly = [...resources.assembly, ...(resources.lazyAssembly ?? [])];
        resources.lazyAssembly = [];
      },
    })
    .create();
  setModuleImports("compute-worker", {
    read(offset, count, into) {
      const bytes = new Uint8Array(reader.readAsArrayBuffer(file.slice(offset, offset + count)));
      into.set(bytes);
      return bytes.length;
    },
    progress(bytes, total, rows) {
      postMessage({ progress: [bytes, total, rows] });
    },
  });
  const compute = (await getAssemblyExports("Rinsewright.Screens.dll")).Rinsewright.Client.Sanitization.ComputeExports;
  self.onmessage = async ({ data }) => {
    file = data.file;
    try {
      postMessage({ answer: await compute.Run(data.request, data.name, file.size) });
    } catch (error) {
      postMessage({ error: String(error) });
    }
  };
  postMessage({ ready: true });
} catch (error) {
  postMessage({ error: String(error) });
}
