using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Sanitization;

/// <summary>The reader's decisions as people read them: never an id. One place for screen and sheet.</summary>
public static class DecisionWords
{
    /// <summary>Field and column (from 0) of an id such as <c>unit[1]</c>; null for one that is about the whole file.</summary>
    public static (string Field, int Index)? Column(string id)
    {
        var open = id.IndexOf('[', StringComparison.Ordinal);
        return
            open > 0
            && id.EndsWith(']')
            && int.TryParse(id.AsSpan(open + 1, id.Length - open - 2), NumberStyles.None, CultureInfo.InvariantCulture, out var index)
            ? (id[..open], index)
            : null;
    }

    /// <summary>Whether a channel is judged as the ware though nothing in the file and nobody says that its sensor rode on it.</summary>
    public static bool IsPlaceAssumed(DecisionDto decision) => decision.Basis == "assumed" && Column(decision.Id)?.Field == "role";

    /// <summary>What was decided, with its column counted from 1.</summary>
    public static string Name(string id, Words words)
    {
        var column = Column(id);
        var key = column?.Field ?? id;
        var name = Known("client.decision." + key, words) ?? key;
        return column is { } c ? words.Say("client.decision.column", ("name", name), ("column", words.Number(c.Index + 1, 0))) : name;
    }

    /// <summary>What it was decided to be.</summary>
    public static string Value(string id, string value, Words words)
    {
        var field = Column(id)?.Field ?? id;
        return field switch
        {
            "role" when Known("measuring-point." + Kebab(value), words) is { } point => point,
            "unit" => Units.Find(value)?.Symbol ?? value,
            "uncertainty" => "±" + value,
            "heading" or "header-line" => value is "0" or "" ? words["client.value.none"] : words.Say("client.value.line", ("line", value)),
            "utc-offset" => value.Length == 0 ? words["client.value.not-said"] : "UTC" + value,
            "clock-hours" => words["client.value.twelve"],
            "clock-back" or "equal-stamps" => words.Say("client.value.times", ("count", value)),
            "faults" => string.Join(
                ", ",
                value.Split(", ").Select(mark => mark is "\"\"" or "" ? words["client.value.empty-field"] : mark)
            ),
            _ => Known("client.value." + value, words) ?? value,
        };
    }

    private static string? Known(string key, Words words) => words[key] is var text && text != $"[{key}]" ? text : null;

    private static string Kebab(string name) =>
        string.Concat(name.Select(c => char.IsUpper(c) ? "-" + char.ToLowerInvariant(c) : c.ToString()));
}
