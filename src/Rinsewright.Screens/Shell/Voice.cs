using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Shell;

/// <summary>Says things in the person's language with values in the person's units.</summary>
public sealed class Voice(Words words, UnitDisplay units)
{
    /// <summary>Words of the language.</summary>
    public Words Words { get; } = words;

    /// <summary>Units shown.</summary>
    public UnitDisplay Units { get; } = units;

    /// <summary>The text of a key.</summary>
    public string this[string key] => Words[key];

    /// <summary>A template with its names replaced.</summary>
    public string Say(string key, params (string Name, string Value)[] values) => Words.Say(key, values);

    /// <summary>A statement, its amounts in the units shown.</summary>
    public string Say(StatementDto statement) => Words.Say(InUnits(statement));

    /// <summary>An amount in the units shown.</summary>
    public string Show(AmountDto amount) => Words.Show(Shown.In(amount, Units));

    /// <summary>A count.</summary>
    public string Count(long count) => Words.Number(count, 0);

    /// <summary>A number.</summary>
    public string Number(double value, int digits) => Words.Number(value, digits);

    /// <summary>The words of a status: <c>inRange</c> and so on.</summary>
    public string Status(string status) => Words["reading-status." + Kebab(status)];

    /// <summary>The words of an outcome: <c>proven</c> and so on.</summary>
    public string Outcome(string outcome) => Words["outcome." + Kebab(outcome)];

    /// <summary>Day and time, with today said as today.</summary>
    public string When(DateTimeOffset at, DateTimeOffset now) =>
        at.Date == now.Date ? Say("client.when.today", ("time", Words.Clock(at))) : Words.Moment(at);

    /// <summary>A size in bytes.</summary>
    public string Size(double bytes) =>
        bytes < 1e6 ? $"{Words.Number(Math.Round(bytes / 1e3, 1), 1)}\u00a0kB" : $"{Words.Number(Math.Round(bytes / 1e6, 1), 1)}\u00a0MB";

    /// <summary>Camel case to the kebab case of word keys.</summary>
    public static string Kebab(string name) =>
        string.Concat(name.Select(c => char.IsUpper(c) ? "-" + char.ToLowerInvariant(c) : c.ToString()));

    private StatementDto InUnits(StatementDto statement) => statement with { Values = [.. statement.Values.Select(InUnits)] };

    private StatementValueDto InUnits(StatementValueDto value) =>
        value.Amount is { } amount ? value with { Amount = Shown.In(amount, Units) }
        : value.Statement is { } inner ? value with { Statement = InUnits(inner) }
        : value;
}
