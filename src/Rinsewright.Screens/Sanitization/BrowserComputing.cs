using System.Runtime.CompilerServices;
using System.Text.Json;
using Microsoft.JSInterop;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Records;
using Rinsewright.Files.Demo;

namespace Rinsewright.Client.Sanitization;

/// <summary>Files are read in the compute worker; typed readings alone take no time and are judged in the page.</summary>
public sealed class BrowserComputing(IJSRuntime js, LateParts parts) : IComputing, IDisposable
{
    private readonly ScriptModule module = new(js, "./js/compute.js");
    private readonly ScriptModule files = new(js, "./js/files.js");
    private DotNetObjectReference<BrowserComputing>? self;

    /// <inheritdoc/>
    public event Action<ComputeProgress>? Progressed;

    /// <inheritdoc/>
    public Task WarmAsync() => module.CallAsync("warm");

    /// <inheritdoc/>
    public async Task<ComputeAnswer> RunAsync(ProofRequest request, TakenFile? file)
    {
        if (file is null)
        {
            return TypedJudging.Answer(request);
        }

        self ??= DotNetObjectReference.Create(this);
        var json = await module.GetAsync<string?>(
            "run",
            JsonSerializer.Serialize(request, ContractsJson.Default.ProofRequest),
            file.Sha256,
            file.Name,
            self
        );
        return json switch
        {
            null => new ComputeAnswer(Cancelled: true),
            "missing" => new ComputeAnswer(Failure: Wire.From(Statement.Of("client.file.missing", ("name", file.Name)))),
            _ => JsonSerializer.Deserialize(json, ClientJson.Default.ComputeAnswer) ?? new ComputeAnswer(Problem: json),
        };
    }

    /// <inheritdoc/>
    public async Task<TakenFile> KeepAsync(byte[] bytes, string name) =>
        JsonSerializer.Deserialize(await files.GetAsync<string>("keep", bytes, name), ClientJson.Default.TakenFile)!;

    /// <inheritdoc/>
    public async Task<TakenFile> KeepDemoAsync(string name)
    {
        await parts.FilesAsync();
        return await KeepAsync(DemoBytes(name), name);
    }

    /// <inheritdoc/>
    public Task CancelAsync() => module.CallAsync("cancel");

    /// <summary>Called by the page's end of the worker.</summary>
    [JSInvokable]
    public void OnProgress(double bytes, double total, double rows) => Progressed?.Invoke(new ComputeProgress(bytes, total, rows));

    /// <inheritdoc/>
    public void Dispose() => self?.Dispose();

    // Apart and not inlined: the type it names is here only once the part has come.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static byte[] DemoBytes(string name) => DemoLoggers.Bytes(name);
}
