using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>On what a decision of the reader rests.</summary>
public enum DecisionBasis
{
    /// <summary>The file says so.</summary>
    Read,

    /// <summary>Follows from the whole file.</summary>
    Inferred,

    /// <summary>Nothing says otherwise.</summary>
    Assumed,

    /// <summary>The person said so.</summary>
    Given,

    /// <summary>Nothing settles it: the person must be asked.</summary>
    Open,
}

/// <summary>One thing the reader decided, with its reason and what else it could have been.</summary>
/// <param name="Id">Stable id: encoding, separator, decimal-mark, heading, date-order, clock, utc-offset, unit, channel …; <c>unit[1]</c> for column 1.</param>
/// <param name="Value">What was decided, as an override would give it.</param>
/// <param name="Because">Why.</param>
/// <param name="Basis">On what it rests.</param>
/// <param name="Alternatives">Values the person may give instead.</param>
public sealed record Decision(string Id, string Value, Statement Because, DecisionBasis Basis, IReadOnlyList<string> Alternatives);

/// <summary>A row that was refused.</summary>
public sealed record RejectedRow(long Line, Statement Reason);

/// <summary>A row that tells of an event (button, download, end of file) and carries no temperature.</summary>
public sealed record LoggerEvent(long Line, DateTime? At, string Text);

/// <summary>A channel with the column it came from and the role its heading or the person gives it.</summary>
public sealed record LoggerChannel(int Column, Trace Trace, MeasuringPoint Role);

/// <summary>What a logger file says and how it was read.</summary>
/// <param name="Name">File name.</param>
/// <param name="Rows">Data rows read, rejected ones included.</param>
/// <param name="RejectedCount">Rows refused, all of them.</param>
/// <param name="Rejected">The first of them (at most 200), by line.</param>
/// <param name="Decisions">Every decision.</param>
/// <param name="Channels">Temperature channels, in column order.</param>
/// <param name="Preamble">Lines before the data, kept as they stood (at most 100).</param>
/// <param name="Events">Event rows (at most 200).</param>
public sealed record LoggerFile(
    string Name,
    long Rows,
    long RejectedCount,
    IReadOnlyList<RejectedRow> Rejected,
    IReadOnlyList<Decision> Decisions,
    IReadOnlyList<LoggerChannel> Channels,
    IReadOnlyList<string> Preamble,
    IReadOnlyList<LoggerEvent> Events
);

/// <summary>The file cannot be read as a logger file: says what, where and how to mend it.</summary>
public sealed class UnreadableFileException(Statement says) : Exception(says.Key)
{
    /// <summary>The message as a statement.</summary>
    public Statement Says { get; } = says;
}

/// <summary>How far the reading is.</summary>
/// <param name="BytesRead">Bytes so far.</param>
/// <param name="BytesTotal">Size of the file; null where not known.</param>
/// <param name="Rows">Rows so far.</param>
public readonly record struct ReadingProgress(long BytesRead, long? BytesTotal, long Rows);

/// <summary>Options of the reader.</summary>
/// <param name="Overrides">What the person says about the file.</param>
/// <param name="Channels">What the person says about columns.</param>
/// <param name="Progress">Told about four times a second of reading at most.</param>
public sealed record LoggerReaderOptions(
    DialectOverrides? Overrides = null,
    IReadOnlyList<ChannelOverride>? Channels = null,
    IProgress<ReadingProgress>? Progress = null
)
{
    /// <summary>Whether every row is read the long way: what the fast way is checked against.</summary>
    internal bool RowByRow { get; init; }
}
