// A second runtime of the same engine. It reads the file where it lies, a stretch at a time, so that size costs no memory.
import { dotnet } from "../_framework/dotnet.js";

let file;
const reader = new FileReaderSync();

try {
  const { setModuleImports, getAssemblyExports, getConfig } = await dotnet
    .withDiagnosticTracing(false)
    .withModuleConfig({
      // What the first page left for later (workbooks) is at hand here from the start; screens, their words and the reader of labels have nothing to do here.
      onConfigLoaded: ({ resources }) => {
        const elsewhere = ["Rinsewright.LateScreens.wasm", "Rinsewright.LateWords.wasm", "zxing.wasm"];
        const late = (resources.lazyAssembly ?? []).filter(({ name }) => !elsewhere.includes(name));
        resources.assembly = [...resources.assembly, ...late];
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
