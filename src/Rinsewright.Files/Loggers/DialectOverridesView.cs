using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>What the person said, checked and in the reader's own terms.</summary>
internal sealed class DialectOverridesView
{
    private readonly Dictionary<int, ChannelOverride> channels;

    public DialectOverridesView(LoggerReaderOptions options)
    {
        var o = options.Overrides ?? new DialectOverrides();
        Encoding = o.Encoding;
        Separator = o.Separator?.Trim().ToLowerInvariant();
        HeaderLine = o.HeaderLine;
        Sheet = o.Sheet;
        DecimalMark = o.DecimalMark?.ToLowerInvariant() switch
        {
            null => null,
            "point" => '.',
            "comma" => ',',
            _ => throw Unknown("decimal-mark", o.DecimalMark!, ["point", "comma"]),
        };
        DateOrder =
            o.DateOrder is null ? null
            : Enum.TryParse<DateOrder>(o.DateOrder, ignoreCase: true, out var order) && !char.IsAsciiDigit(o.DateOrder[0]) ? order
            : throw Unknown("date-order", o.DateOrder, ["ymd", "dmy", "mdy"]);
        OffsetMinutes = o.UtcOffset is null
            ? null
            : ZoneWords.OffsetOf(o.UtcOffset) ?? throw Unknown("utc-offset", o.UtcOffset, ["+00:00", "-05:00"]);
        Unit = o.Unit is null ? null : CheckedUnit(o.Unit);
        Marks = new FaultMarks(o.FaultMarks);
        channels = (options.Channels ?? []).GroupBy(c => c.Index).ToDictionary(g => g.Key, g => g.Last());
        foreach (var channel in channels.Values)
        {
            _ = channel.Unit is null ? null : CheckedUnit(channel.Unit);
            _ = Role(channel);
        }
    }

    public string? Encoding { get; }

    public string? Separator { get; }

    public char? DecimalMark { get; }

    public DateOrder? DateOrder { get; }

    public int? OffsetMinutes { get; }

    public int? HeaderLine { get; }

    public string? Unit { get; }

    public string? Sheet { get; }

    public FaultMarks Marks { get; }

    /// <summary>What was said about a column; null where nothing.</summary>
    public ChannelOverride? Channel(int column) => channels.GetValueOrDefault(column);

    /// <summary>The role given; null where none or the column is to be ignored.</summary>
    public static MeasuringPoint? Role(ChannelOverride? channel) =>
        channel?.Role is null || IsIgnored(channel) ? null
        : Enum.TryParse<MeasuringPoint>(channel.Role, ignoreCase: true, out var role) && !char.IsAsciiDigit(channel.Role[0]) ? role
        : throw Unknown(
            "role",
            channel.Role,
            [.. Enum.GetNames<MeasuringPoint>().Select(n => char.ToLowerInvariant(n[0]) + n[1..]), "ignore"]
        );

    public static bool IsIgnored(ChannelOverride? channel) => string.Equals(channel?.Role, "ignore", StringComparison.OrdinalIgnoreCase);

    /// <summary>The refusal of an override's value.</summary>
    public static UnreadableFileException Unknown(string what, string value, IEnumerable<string> known) =>
        new(Statement.Of("files.override-unknown", ("what", what), ("value", value), ("known", string.Join(", ", known))));

    private static string CheckedUnit(string unit) =>
        UnitWords.Temperatures.Contains(unit) ? unit : UnitWords.Exact(unit) ?? throw Unknown("unit", unit, UnitWords.Temperatures);
}
