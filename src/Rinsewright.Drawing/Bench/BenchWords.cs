using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing.Bench;

/// <summary>Words of the Bench that screens and the command line share.</summary>
public static class BenchWords
{
    /// <summary>Where an equation comes from: in words where it is no key of the list of sources.</summary>
    public static string Source(Words words, string source)
    {
        var key = "bench.source." + source.ToLowerInvariant().Replace(' ', '-');
        var said = words[key];
        return said == $"[{key}]" ? source : said;
    }

    /// <summary>Name of a sum that was kept.</summary>
    public static string Name(Words words, SetUp sum) => words[$"bench.{sum.Tool}.name"];

    /// <summary>What it gave, the result that matters most first.</summary>
    public static string Found(Words words, SetUp sum, UnitDisplay units) => List(words, "bench.result.", sum.Found, units);

    /// <summary>What it was worked from.</summary>
    public static string Given(Words words, SetUp sum, UnitDisplay units) => List(words, "bench.field.", sum.Given, units);

    private static string List(Words words, string key, IReadOnlyList<KeyValuePair<string, Amount>> amounts, UnitDisplay units) =>
        string.Join("; ", amounts.Select(a => $"{words[key + a.Key]} {Figure(words, a.Value, units)}"));

    /// <summary>
    /// A figure of a sum in the units shown: four figures where it has decimals, so that a drop of 0.05 mL does not read 0.1; what stands before the point is never rounded.
    /// </summary>
    public static string Figure(Words words, Amount amount, UnitDisplay units)
    {
        const int Figures = 4;
        var shown = amount.In(Shown.UnitFor(amount.Unit, units));
        var decimals = shown.Value == 0 ? 0 : Math.Clamp(Figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(shown.Value))), 0, 8);
        return $"{words.Number(shown.Value, decimals)}\u00a0{shown.Unit.Symbol}".TrimEnd('\u00a0');
    }
}
