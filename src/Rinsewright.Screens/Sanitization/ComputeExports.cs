using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Loggers;
using Rinsewright.Files.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>What the compute worker calls.</summary>
public static partial class ComputeExports
{
    /// <summary>Runs one proof.</summary>
    /// <param name="requestJson">A <see cref="ProofRequest"/>.</param>
    /// <param name="name">Name of the file.</param>
    /// <param name="size">Its size, bytes.</param>
    /// <returns>A <see cref="ComputeAnswer"/> as JSON.</returns>
    [JSExport]
    [SupportedOSPlatform("browser")]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static async Task<string> Run(string requestJson, string name, double size)
    {
        var request = JsonSerializer.Deserialize(requestJson, ContractsJson.Default.ProofRequest)!;
        await using var file = new WorkerFile((long)size);
        var answer = await AnswerAsync(request, file, name, new WorkerProgress());
        return JsonSerializer.Serialize(answer, ClientJson.Default.ComputeAnswer);
    }

    /// <summary>Runs a proof over a file and turns what can go wrong into words.</summary>
    public static async Task<ComputeAnswer> AnswerAsync(
        ProofRequest request,
        Stream file,
        string name,
        IProgress<ReadingProgress>? progress
    )
    {
        try
        {
            return new ComputeAnswer(await ProofRun.RunAsync(request, file, name, progress, CancellationToken.None));
        }
        catch (UnreadableFileException e)
        {
            return new ComputeAnswer(Failure: Wire.From(e.Says));
        }
        catch (Exception e) when (TypedJudging.Problem(e, request) is { } problem)
        {
            return new ComputeAnswer(Problem: problem);
        }
    }

    [SupportedOSPlatform("browser")]
    private sealed class WorkerProgress : IProgress<ReadingProgress>
    {
        public void Report(ReadingProgress value) => WorkerFile.Progress(value.BytesRead, value.BytesTotal ?? 0, value.Rows);
    }
}
