using System.CommandLine;
using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Files.Loggers;

namespace Rinsewright.Cli.Sanitization;

/// <summary>What the person says about the file instead of the reader's own decision.</summary>
internal sealed class DialectOptions
{
    private readonly Option<string[]> roles = Options.Many("--role", "CHANNEL=ROLE");
    private readonly Option<string[]> unit = Options.Many("--unit", "[CHANNEL=]UNIT");
    private readonly Option<string?> dateOrder = Options.Among("--date-order", "ORDER", ["ymd", "dmy", "mdy"]);
    private readonly Option<string?> decimalMark = Options.Among("--decimal-mark", "MARK", ["point", "comma"]);
    private readonly Option<string?> separator = Options.Among("--separator", "SIGN", ["comma", "semicolon", "tab", "spaces"]);
    private readonly Option<string?> encoding = Options.Among("--encoding", "NAME", ["utf-8", "utf-16le", "utf-16be", "windows-1252"]);
    private readonly Option<string?> utcOffset = Options.One("--utc-offset", "+HH:MM");
    private readonly Option<string?> headerLine = Options.One("--header-line", "LINE");
    private readonly Option<string[]> faultMarks = Options.Many("--fault-mark", "TEXT");
    private readonly Option<string?> worksheet = Options.One("--worksheet", "NAME");

    public DialectOptions()
    {
        roles.CompletionSources.Add(_ => TradeWords.Shown(TradeWords.Roles).Select(r => "1=" + r));
        unit.CompletionSources.Add("F", "C", "K");
    }

    public Option[] All => [roles, unit, dateOrder, decimalMark, separator, encoding, utcOffset, headerLine, faultMarks, worksheet];

    /// <summary>The option that overrides a decision of the reader; null where none does.</summary>
    public static string? Overriding(string decision) =>
        decision.Split('[')[0] switch
        {
            "role" => "--role",
            "unit" => "--unit",
            "date-order" => "--date-order",
            "decimal-mark" => "--decimal-mark",
            "separator" => "--separator",
            "encoding" => "--encoding",
            "utc-offset" => "--utc-offset",
            "heading" or "header-line" => "--header-line",
            "sheet" or "worksheet" => "--worksheet",
            "uncertainty" => "--uncertainty",
            _ => null,
        };

    /// <summary>The overrides for a whole file; null where none were typed.</summary>
    public DialectOverrides? Read(ParseResult parsed, Words words)
    {
        var overrides = new DialectOverrides(
            Among(parsed, encoding, words),
            Among(parsed, separator, words),
            Among(parsed, decimalMark, words),
            Among(parsed, dateOrder, words),
            Offset(parsed, words),
            Line(parsed, words),
            (parsed.GetValue(unit) ?? []).LastOrDefault(u => !u.Contains('=', StringComparison.Ordinal)) is { } u ? Unit(u, words) : null,
            parsed.GetValue(faultMarks) is { Length: > 0 } marks ? marks : null,
            parsed.GetValue(worksheet)
        );
        return overrides == new DialectOverrides() ? null : overrides;
    }

    /// <summary>The overrides for single columns; a channel named by its heading is looked up in the file.</summary>
    public async Task<IReadOnlyList<ChannelOverride>?> ReadChannelsAsync(
        ParseResult parsed,
        Words words,
        Stream? file,
        string name,
        CancellationToken cancellation
    )
    {
        var wanted = (parsed.GetValue(roles) ?? [])
            .Select(r =>
                (
                    Channel: Left(r, roles.Name, words),
                    Role: (string?)TradeWords.Find(TradeWords.Roles, Right(r), roles.Name, words),
                    Unit: (string?)null
                )
            )
            .Concat(
                (parsed.GetValue(unit) ?? [])
                    .Where(u => u.Contains('=', StringComparison.Ordinal))
                    .Select(u => (Channel: Left(u, unit.Name, words), Role: (string?)null, Unit: (string?)Unit(Right(u), words)))
            )
            .ToList();
        if (wanted.Count == 0 || file is null)
        {
            return null;
        }

        LoggerFile? logger = null;
        var overrides = new Dictionary<int, ChannelOverride>();
        foreach (var (channel, role, unitCode) in wanted)
        {
            if (int.TryParse(channel, NumberStyles.None, CultureInfo.InvariantCulture, out var column))
            {
                if (column == 0)
                {
                    throw new UsageException(
                        words.Say("cli.error.column", ("option", role is null ? unit.Name : roles.Name), ("value", channel))
                    );
                }
            }
            else
            {
                logger ??= await LoggerReader.ReadAsync(file, name, new LoggerReaderOptions(Read(parsed, words)), cancellation);
                column = Column(logger, channel, words) + 1;
            }

            var before = overrides.GetValueOrDefault(column) ?? new ChannelOverride(column - 1);
            overrides[column] = before with { Role = role ?? before.Role, Unit = unitCode ?? before.Unit };
        }

        return [.. overrides.Values];
    }

    private static int Column(LoggerFile logger, string name, Words words)
    {
        var found = logger.Channels.Where(c => string.Equals(c.Trace.Name, name, StringComparison.OrdinalIgnoreCase)).ToList();
        if (found.Count == 0)
        {
            // "Plate" is enough for the heading "Plate (°F)".
            found = [.. logger.Channels.Where(c => c.Trace.Name.StartsWith(name, StringComparison.OrdinalIgnoreCase))];
        }

        var known = string.Join(", ", logger.Channels.Select(c => $"{c.Trace.Name} ({c.Column + 1})"));
        return found.Count switch
        {
            1 => found[0].Column,
            0 => throw new UsageException(words.Say("cli.error.no-channel", ("channel", name), ("channels", known))),
            _ => throw new UsageException(words.Say("cli.error.same-channel", ("channel", name), ("channels", known))),
        };
    }

    private static string Left(string text, string option, Words words) =>
        text.LastIndexOf('=') is > 0 and var at
            ? text[..at].Trim()
            : throw new UsageException(words.Say("cli.error.pair", ("option", option), ("value", text)));

    private static string Right(string text) => text[(text.LastIndexOf('=') + 1)..].Trim();

    private static string Unit(string text, Words words) =>
        UnitText.Find(text, Dimension.Temperature)?.Ucum
        ?? throw new UsageException(words.Say("cli.error.not-among", ("option", "--unit"), ("value", text), ("values", "F, C, K")));

    private static string? Among(ParseResult parsed, Option<string?> option, Words words)
    {
        var value = parsed.GetValue(option)?.ToLowerInvariant();
        var values = option.GetCompletions(System.CommandLine.Completions.CompletionContext.Empty).Select(c => c.Label).ToList();
        return value is null || values.Contains(value, StringComparer.Ordinal)
            ? value
            : throw new UsageException(CommandLine.NotAmong(words, option.Name, value, values));
    }

    private string? Offset(ParseResult parsed, Words words)
    {
        var text = parsed.GetValue(utcOffset)?.Replace('\u2212', '-');
        var valid =
            text is null or "Z"
            || (
                text.Length == 6
                && text[0] is '+' or '-'
                && TimeSpan.TryParseExact(text[1..], "hh\\:mm", CultureInfo.InvariantCulture, out var span)
                && span.TotalHours <= 14
            );
        return valid ? (text == "Z" ? "+00:00" : text) : throw new UsageException(words.Say("cli.error.offset", ("value", text!)));
    }

    private int? Line(ParseResult parsed, Words words) =>
        parsed.GetValue(headerLine) is not { } text ? null
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var line) ? line
        : throw new UsageException(words.Say("cli.error.line", ("value", text)));
}
