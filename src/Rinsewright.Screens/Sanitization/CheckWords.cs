using Rinsewright.Client.Shell;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>Names and values of checks for the lines under <i>Why</i>.</summary>
public static class CheckWords
{
    /// <summary>What was checked, in a few words.</summary>
    public static string Name(CheckDto check, Voice voice)
    {
        var own = "client.check." + check.Id;
        if (voice[own] is var text && !text.StartsWith('['))
        {
            return text;
        }

        var point = check.Reading?.Point ?? check.Limit?.Point;
        return point is null ? voice["client.check.other"] : Upper(voice["measuring-point." + Voice.Kebab(point)]);
    }

    /// <summary>The value at the line's end; the word where nothing was read.</summary>
    public static string Value(CheckDto check, Voice voice) =>
        check.Status == "notRead" || check.Value is null ? voice.Status("notRead")
        : check.Reading?.Reached is { } reached ? voice[reached ? "client.label.reached" : "client.label.not-reached"]
        : voice.Show(check.Value);

    /// <summary>The limit in one line with its source; null where none applies.</summary>
    public static string? Limit(CheckDto check, Voice voice)
    {
        if (check.Limit is not { } limit)
        {
            return null;
        }

        var figure = Shown.LimitFor(limit, check.Value?.Unit ?? limit.Printed[0].Unit, voice.Units);
        return voice.Say(
            "client.limit-line",
            ("sense", voice["limit-sense." + limit.Sense]),
            ("limit", voice.Words.Show(figure)),
            ("source", voice.Words.Show(limit.Citation))
        );
    }

    /// <summary>The bounds in one line; null where there are none.</summary>
    public static string? Bounds(CheckDto check, Voice voice) =>
        check is { Low: { } low, High: { } high } ? voice.Say("client.bounds", ("low", voice.Show(low)), ("high", voice.Show(high))) : null;

    /// <summary>First letter in upper case; pH stays as it is written.</summary>
    public static string Upper(string text) =>
        text.Length == 0 || text.StartsWith("pH", StringComparison.Ordinal) ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
