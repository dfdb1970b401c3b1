using System.Text.Json;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Contracts.Machines;

/// <summary>Everything found wrong in one file, in the order it was found.</summary>
internal sealed class Problems
{
    private readonly List<MachineProblem> all = [];

    internal IReadOnlyList<MachineProblem> All => all;

    internal bool At(string path) =>
        all.Exists(p =>
            p.Path == path
            || p.Path.StartsWith(path + ".", StringComparison.Ordinal)
            || p.Path.StartsWith(path + "[", StringComparison.Ordinal)
        );

    /// <summary>Tells fields that stand more than once; the last counts in the rest of the reading.</summary>
    internal void Twice(JsonElement element, string path)
    {
        foreach (var name in element.EnumerateObject().GroupBy(p => p.Name, StringComparer.Ordinal).Where(g => g.Skip(1).Any()))
        {
            Add(path.Length == 0 ? name.Key : $"{path}.{name.Key}", "twice");
        }
    }

    internal void Add(string path, string key, params (string Name, object Value)[] values) =>
        all.Add(new MachineProblem(path, Wire.From(Statement.Of($"machine-file.{key}", values))));
}

/// <summary>What a figure can be at all.</summary>
/// <param name="Least">Least value; null for none.</param>
/// <param name="Most">Highest value; null for none.</param>
/// <param name="Open">The least value itself is not allowed.</param>
internal sealed record Bounds(Amount? Least, Amount? Most, bool Open = false)
{
    internal static Bounds Positive(double most, Unit unit) => new(new Amount(0, unit), new Amount(most, unit), Open: true);

    internal static Bounds NotNegative(double most, Unit unit) => new(new Amount(0, unit), new Amount(most, unit));

    internal static Bounds Between(double least, double most, Unit unit) => new(new Amount(least, unit), new Amount(most, unit));

    internal static readonly Bounds Share = Between(0, 1, Units.One);

    internal static readonly Bounds PartOfWhole = new(new Amount(0, Units.One), new Amount(1, Units.One), Open: true);

    // Water stays water at the pressure of the room.
    internal static readonly Bounds Water = Between(0, 100, Units.Celsius);

    internal static readonly Bounds Place = Between(-5, 30, Units.Metre);

    /// <summary>Says what is wrong with an amount, if anything. Bounds are told in the unit the amount was written in.</summary>
    /// <returns>Whether it can be.</returns>
    internal bool Check(Amount written, string path, Problems problems)
    {
        // A bound converted into the written unit and back is off by rounding.
        const double Slack = 1e-12;
        if (Least is { } least && (Open ? written.SI <= least.SI : written.SI < least.SI - (Slack * Math.Abs(least.SI))))
        {
            problems.Add(path, Open ? "not-more" : "too-little", ("least", least.In(written.Unit)), ("value", written));
            return false;
        }

        if (Most is { } most && written.SI > most.SI * (1 + Slack))
        {
            problems.Add(path, "too-much", ("most", most.In(written.Unit)), ("value", written));
            return false;
        }

        return true;
    }
}
