using System.Globalization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Bench;

/// <summary>Gathers an answer while a tool works. Formulas are written in the notation of the trade, numbers with a point; screens turn the decimal mark.</summary>
internal sealed class Working
{
    private readonly List<BenchResult> results = [];
    private readonly List<BenchStep> steps = [];
    private readonly List<Statement> notes = [];
    private readonly List<Statement> cautions = [];

    /// <summary>A figure, in the unit it is spoken of.</summary>
    public Working Gives(string id, Amount? value, int digits, Amount? low = null, Amount? high = null)
    {
        results.Add(new BenchResult(id, value, digits, low, high));
        return this;
    }

    /// <summary>A plain number.</summary>
    public Working Gives(string id, double value, int digits) => Gives(id, new Amount(value, Units.One), digits);

    /// <summary>A line of the working.</summary>
    public Working By(string equation, string source, FormattableString formula)
    {
        steps.Add(new BenchStep(formula.ToString(CultureInfo.InvariantCulture), equation, source));
        return this;
    }

    /// <summary>What the figures say or assume.</summary>
    public Working Note(string key, params (string Name, object Value)[] values)
    {
        notes.Add(Statement.Of(key, values));
        return this;
    }

    /// <summary>What can hurt here.</summary>
    public Working Caution(string key)
    {
        cautions.Add(Statement.Of(key));
        return this;
    }

    public BenchAnswer Answer() => new(results, steps, notes, cautions);
}
