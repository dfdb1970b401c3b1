using Microsoft.AspNetCore.Components.WebAssembly.Services;
using Rinsewright.Contracts.Language;

namespace Rinsewright.Client.Shell;

/// <summary>
/// Libraries that the first page does without. They are fetched when first needed; the service worker keeps them beside the rest, so that without a signal
/// they come from the device.
/// </summary>
public sealed class LateParts(LazyAssemblyLoader loader)
{
    // The same names stand in the project file, and what works in the compute worker is fetched there (compute-worker.js).
    private static readonly string[] Screens = ["Rinsewright.LateWords.wasm", "Rinsewright.LateScreens.wasm"];

    // Addresses of the screens that are there from the start; of any other the late ones have to say whether it is theirs.
    private static readonly string[] First = ["", "proof", "more", "not-found"];

    // What is drawn, read from files or printed has words of its own.
    private static readonly string[] Drawing = ["Rinsewright.LateWords.wasm", "Rinsewright.Drawing.wasm"];

    private static readonly string[] Files = [.. Drawing, "Rinsewright.Files.wasm"];

    private static readonly string[] Sheets =
    [
        .. Files,
        "PdfSharp.wasm",
        "PdfSharp.Shared.wasm",
        "PdfSharp.System.wasm",
        "System.ComponentModel.Primitives.wasm",
        "System.IO.Compression.wasm",
    ];

    private static readonly string[] Tables =
    [
        .. Files,
        "ExcelDataReader.wasm",
        "System.Collections.NonGeneric.wasm",
        "System.ComponentModel.Primitives.wasm",
        "System.Data.Common.wasm",
        "System.IO.Compression.wasm",
        "System.Private.Xml.wasm",
    ];

    private static readonly string[] Codes = [.. Files, "zxing.wasm"];

    private static readonly string[] Calibration =
    [
        "MathNet.Numerics.wasm",
        "System.Runtime.Numerics.wasm",
        "System.Runtime.Serialization.Primitives.wasm",
        "System.Threading.Tasks.Parallel.wasm",
    ];

    private static readonly string[] Knowledge = ["Rinsewright.Knowledge.wasm"];

    /// <summary>Whether a screen was asked for that could not be fetched.</summary>
    public bool Missing { get; private set; }

    /// <summary>Whether a screen, if there is such a one, comes late.</summary>
    /// <param name="address">First word of its address.</param>
    public static bool HasScreen(string address) => !First.Contains(address, StringComparer.OrdinalIgnoreCase);

    /// <summary>Fetches the screens that are not there from the start.</summary>
    /// <returns>Where the router finds them.</returns>
    /// <exception cref="HttpRequestException">They are neither on the device nor to be had.</exception>
    public async Task<IEnumerable<System.Reflection.Assembly>> ScreensAsync()
    {
        Missing = true;
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Screens);
        }

        Words.LateAreHere();
        Missing = false;

        // The loader tells only of what it has fetched this time: of two, one may have come the time before.
        return AppDomain.CurrentDomain.GetAssemblies().Where(a => a.GetName().Name == "Rinsewright.LateScreens");
    }

    /// <summary>Fetches the words that come late, such as names of sources; nothing where they are here already.</summary>
    /// <exception cref="HttpRequestException">They are neither on the device nor to be had.</exception>
    public async Task WordsAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Drawing[..1]);
            Words.LateAreHere();
        }
    }

    /// <summary>Fetches what draws charts, sections and ware; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task DrawingAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Drawing);
            Words.LateAreHere();
        }
    }

    /// <summary>Fetches what reads tables and workbooks; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task TablesAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Tables);
            Words.LateAreHere();
        }
    }

    /// <summary>Fetches what holds the demo files; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task FilesAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Files);
            Words.LateAreHere();
        }
    }

    /// <summary>Fetches what the trade knows; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task KnowledgeAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Knowledge);
        }
    }

    /// <summary>Fetches what visits are judged with: the knowledge, and what solves the balance of a machine's readings; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task JudgingAsync()
    {
        await KnowledgeAsync();
        await CalibrationAsync();
    }

    /// <summary>Fetches what a calibration solves with; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task CalibrationAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Calibration);
        }
    }

    /// <summary>Fetches what draws and reads the square codes on machines; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task CodesAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Codes);
            Words.LateAreHere();
        }
    }

    /// <summary>Fetches what makes a PDF; nothing where it is here already.</summary>
    /// <exception cref="HttpRequestException">It is neither on the device nor to be had.</exception>
    public async Task SheetsAsync()
    {
        if (OperatingSystem.IsBrowser())
        {
            await loader.LoadAssembliesAsync(Sheets);
            Words.LateAreHere();
        }
    }
}
