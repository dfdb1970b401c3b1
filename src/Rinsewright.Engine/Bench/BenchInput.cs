using System.Collections.Immutable;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Bench;

/// <summary>What was typed into a tool. Immutable.</summary>
public sealed class BenchInput
{
    private readonly ImmutableDictionary<string, Amount> amounts;
    private readonly ImmutableDictionary<string, string> choices;

    private BenchInput(ImmutableDictionary<string, Amount> amounts, ImmutableDictionary<string, string> choices)
    {
        this.amounts = amounts;
        this.choices = choices;
    }

    /// <summary>Nothing typed.</summary>
    public static BenchInput Empty { get; } =
        new(
            ImmutableDictionary<string, Amount>.Empty.WithComparers(StringComparer.Ordinal),
            ImmutableDictionary<string, string>.Empty.WithComparers(StringComparer.Ordinal)
        );

    /// <summary>The usual figures and choices of a tool.</summary>
    public static BenchInput UsualOf(BenchTool tool)
    {
        var input = Empty;
        foreach (var field in tool.Fields)
        {
            if (field.Usual is { } usual)
            {
                input = input.And(field.Id, new Amount(usual, field.Unit));
            }
        }

        return input.With(tool);
    }

    /// <summary>The same with a figure.</summary>
    public BenchInput And(string id, Amount amount) => new(amounts.SetItem(id, amount), choices);

    /// <summary>The same with a choice.</summary>
    public BenchInput And(string id, string choice) => new(amounts, choices.SetItem(id, choice));

    /// <summary>The same without a figure.</summary>
    public BenchInput Without(string id) => new(amounts.Remove(id), choices);

    /// <summary>A figure as typed; null where it is not there.</summary>
    public Amount? Find(string id) => amounts.TryGetValue(id, out var amount) ? amount : null;

    /// <summary>A choice; null where nobody chose.</summary>
    public string? FindChoice(string id) => choices.GetValueOrDefault(id);

    /// <summary>The same with the usual choices of a tool where nobody chose, and figures at the very edge of a range on its edge.</summary>
    internal BenchInput With(BenchTool tool)
    {
        var figures = amounts;
        foreach (var field in tool.Fields)
        {
            if (Find(field.Id) is { } amount && amount.Unit.Dimension == field.Unit.Dimension)
            {
                var value = amount.In(field.Unit).Value;
                if (value < field.Low || value > field.High)
                {
                    figures = figures.SetItem(field.Id, new Amount(Math.Clamp(value, field.Low, field.High), field.Unit));
                }
            }
        }

        var all = choices;
        foreach (var choice in tool.Choices)
        {
            if (!all.ContainsKey(choice.Id))
            {
                all = all.Add(choice.Id, choice.Usual);
            }
        }

        return new BenchInput(figures, all);
    }

    internal T Get<T>(string id)
        where T : struct, IQuantity<T> => T.From(amounts[id]);

    internal T? Maybe<T>(string id)
        where T : struct, IQuantity<T> => amounts.TryGetValue(id, out var amount) ? T.From(amount) : null;

    internal double Number(string id) => amounts[id].SI;

    internal string Choice(string id) => choices[id];
}

/// <summary>Something that keeps a tool from answering.</summary>
/// <param name="Field">Field or choice it is about.</param>
/// <param name="Says">What, and what would be right.</param>
public sealed record BenchProblem(string Field, Statement Says)
{
    internal static BenchProblem? Of(BenchField field, Amount? typed)
    {
        if (typed is not { } amount)
        {
            return field.Optional ? null : new BenchProblem(field.Id, Statement.Of("bench.problem.missing"));
        }

        if (amount.Unit.Dimension != field.Unit.Dimension)
        {
            return new BenchProblem(field.Id, Statement.Of("bench.problem.unit", ("unit", amount.Unit.Symbol)));
        }

        // Values at the very edge count as inside, whatever unit they were typed in.
        var slack = 1e-9 * (field.High - field.Low);
        var value = amount.In(field.Unit).Value;
        return value >= field.Low - slack && value <= field.High + slack
            ? null
            : new BenchProblem(
                field.Id,
                Statement.Of(
                    "bench.problem.range",
                    ("low", new Amount(field.Low, field.Unit).In(amount.Unit)),
                    ("high", new Amount(field.High, field.Unit).In(amount.Unit))
                )
            );
    }
}

/// <summary>Figures that are each possible but not together.</summary>
internal sealed class BenchException(string field, Statement says) : Exception(says.Key)
{
    public string Field { get; } = field;

    public Statement Says { get; } = says;
}
