using System.Text.Json.Serialization;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>A file the person gave.</summary>
/// <param name="Sha256">Hex of its SHA-256; a made-up id where it is too large to keep; empty where it could not be read.</param>
/// <param name="Name">Its name.</param>
/// <param name="Size">Bytes.</param>
/// <param name="Kept">Whether its bytes are kept on the device.</param>
public sealed record TakenFile(string Sha256, string Name, long Size, bool Kept);

/// <summary>What computing gave: a report, or why not.</summary>
/// <param name="Report">The report.</param>
/// <param name="Failure">What is wrong with the file, in words to come.</param>
/// <param name="Problem">What is wrong with what was asked.</param>
/// <param name="Cancelled">Whether the person stopped it.</param>
public sealed record ComputeAnswer(
    [property: JsonConverter(typeof(ProofReportJson))] ProofReport? Report = null,
    [property: JsonConverter(typeof(StatementJson))] StatementDto? Failure = null,
    string? Problem = null,
    bool Cancelled = false
);

/// <summary>How far the reading of a file is.</summary>
/// <param name="Bytes">Bytes read.</param>
/// <param name="Total">Bytes there are; 0 where not known.</param>
/// <param name="Rows">Rows read.</param>
public sealed record ComputeProgress(double Bytes, double Total, double Rows);

/// <summary>Runs a proof so that the page stays live.</summary>
public interface IComputing
{
    /// <summary>Told how far the reading is.</summary>
    event Action<ComputeProgress>? Progressed;

    /// <summary>Gets ready, so that the first file does not wait.</summary>
    Task WarmAsync();

    /// <summary>Runs a proof over a file, or over typed readings alone.</summary>
    Task<ComputeAnswer> RunAsync(ProofRequest request, TakenFile? file);

    /// <summary>Keeps bytes on the device like a file that was given.</summary>
    Task<TakenFile> KeepAsync(byte[] bytes, string name);

    /// <summary>Keeps an invented file of the demo on the device like a file that was given.</summary>
    /// <param name="name">One of the demo's names.</param>
    Task<TakenFile> KeepDemoAsync(string name);

    /// <summary>Stops the run.</summary>
    Task CancelAsync();
}
