using Rinsewright.Client.Sanitization;
using Rinsewright.Contracts.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>The engine itself, in the page, over bytes in memory.</summary>
internal sealed class MemoryComputing : IComputing
{
    private readonly Dictionary<string, byte[]> files = new(StringComparer.Ordinal);
    private bool running;
    private TaskCompletionSource cancelled = new();

    public event Action<ComputeProgress>? Progressed;

    public Task WarmAsync() => Task.CompletedTask;

    public async Task<ComputeAnswer> RunAsync(ProofRequest request, TakenFile? file)
    {
        if (file is null)
        {
            return TypedJudging.Answer(request);
        }

        // The worker has one answer to give: a second question would take it from the first.
        Assert.False(running, "Two files are read at once.");
        running = true;
        try
        {
            Progressed?.Invoke(new ComputeProgress(1, 2, 3));
            Runs++;
            cancelled = new TaskCompletionSource();
            if (await Task.WhenAny(Held, cancelled.Task) == cancelled.Task)
            {
                return new ComputeAnswer(Cancelled: true);
            }

            using var stream = new MemoryStream(files[file.Sha256]);
            return await ComputeExports.AnswerAsync(request, stream, file.Name, null);
        }
        finally
        {
            running = false;
        }
    }

    public Task<TakenFile> KeepAsync(byte[] bytes, string name)
    {
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        files[hash] = bytes;
        return Task.FromResult(new TakenFile(hash, name, bytes.Length, true));
    }

    public Task<TakenFile> KeepDemoAsync(string name) =>
        NoDemos ? throw new HttpRequestException("no signal") : KeepAsync(Rinsewright.Files.Demo.DemoLoggers.Bytes(name), name);

    /// <summary>Whether the invented files cannot be fetched.</summary>
    public bool NoDemos { get; set; }

    /// <summary>What the reading of a file waits for.</summary>
    public Task Held { get; set; } = Task.CompletedTask;

    /// <summary>How often a file was read.</summary>
    public int Runs { get; private set; }

    public Task CancelAsync()
    {
        cancelled.TrySetResult();
        return Task.CompletedTask;
    }
}
