using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Bench;

/// <summary>Where a tool stands in the list.</summary>
public enum BenchArea
{
    /// <summary>Titration and strength.</summary>
    Strength,

    /// <summary>Dosing and sanitizer.</summary>
    Dosing,

    /// <summary>Hardness, scale and deliming.</summary>
    Scale,

    /// <summary>Flow and pressure.</summary>
    Flow,

    /// <summary>Heat and power.</summary>
    Heat,

    /// <summary>Use and cost.</summary>
    Cost,

    /// <summary>What to do while the machine is down.</summary>
    Down,
}

/// <summary>A figure a tool asks for.</summary>
/// <param name="Id">Name, the same in every tool that asks for it; <c>bench.field.{id}</c> in the language files.</param>
/// <param name="Unit">Unit of the figures below; typed values may have any unit of its dimension. A plain number is in <see cref="Units.One"/>.</param>
/// <param name="Usual">Filled in at first; null where the technician has to say it.</param>
/// <param name="Low">Least that is accepted.</param>
/// <param name="High">Most that is accepted.</param>
/// <param name="Nudge">Change by which the tool shows how much the answer hangs on it; 0 for none.</param>
/// <param name="Optional">Whether it may be left out.</param>
public sealed record BenchField(string Id, Unit Unit, double? Usual, double Low, double High, double Nudge = 0, bool Optional = false)
{
    /// <summary>When it is asked for; null for always.</summary>
    public BenchWhen? When { get; init; }
}

/// <summary>That a figure is asked for with some options of a choice only.</summary>
/// <param name="Choice">Choice.</param>
/// <param name="Options">Options with which it is.</param>
public sealed record BenchWhen(string Choice, IReadOnlyList<string> Options);

/// <summary>A choice a tool asks for.</summary>
/// <param name="Id">Name; <c>bench.choice.{id}</c>, its options <c>bench.choice.{id}.{option}</c>.</param>
/// <param name="Options">What there is.</param>
/// <param name="Usual">Taken at first.</param>
public sealed record BenchChoice(string Id, IReadOnlyList<string> Options, string Usual)
{
    /// <summary>Stands before the figures: everything hangs on it.</summary>
    public bool Leads { get; init; }

    /// <summary>When it is asked for; null for always.</summary>
    public BenchWhen? When { get; init; }
}

/// <summary>A figure a tool gives.</summary>
/// <param name="Id">Name; <c>bench.result.{id}</c> in the language files.</param>
/// <param name="Value">Value in the unit it is usually spoken of; null where it cannot be told.</param>
/// <param name="Low">Least it may be; null where no band is known.</param>
/// <param name="High">Most it may be.</param>
/// <param name="Digits">Decimals worth showing.</param>
public sealed record BenchResult(string Id, Amount? Value, int Digits, Amount? Low = null, Amount? High = null);

/// <summary>One line of the working.</summary>
/// <param name="Formula">As a technician writes it, with the numbers in it.</param>
/// <param name="Equation">Its id in the README of the engine folder that holds it.</param>
/// <param name="Source">Key of the source, or where it comes from.</param>
public sealed record BenchStep(string Formula, string Equation, string Source);

/// <summary>What a tool answers.</summary>
/// <param name="Results">Figures, the one that matters most first.</param>
/// <param name="Steps">The working.</param>
/// <param name="Notes">What the figures say and assume.</param>
/// <param name="Cautions">What can hurt at this step; shown before the results.</param>
public sealed record BenchAnswer(
    IReadOnlyList<BenchResult> Results,
    IReadOnlyList<BenchStep> Steps,
    IReadOnlyList<Statement> Notes,
    IReadOnlyList<Statement> Cautions
);

/// <summary>One of the technician's sums.</summary>
/// <param name="Id">Name, stable, on the command line and in files; <c>bench.{id}.name</c> and <c>bench.{id}.about</c> in the language files.</param>
/// <param name="Area">Where it stands in the list.</param>
/// <param name="Fields">Figures it asks for.</param>
/// <param name="Choices">Choices it asks for.</param>
/// <param name="Compute">The sum; called with every field that is not optional in its range.</param>
/// <param name="CurveOver">Field along which the first result is drawn as a curve; null for none.</param>
public sealed record BenchTool(
    string Id,
    BenchArea Area,
    IReadOnlyList<BenchField> Fields,
    IReadOnlyList<BenchChoice> Choices,
    Func<BenchInput, BenchAnswer> Compute,
    string? CurveOver = null
)
{
    private const int CurvePoints = 49;

    // What a sum does not hang on at all moves it by rounding only.
    private const double Rounding = 1e-9;

    /// <summary>Works it out; or says everything that is missing or cannot be.</summary>
    public BenchOutcome Solve(BenchInput input)
    {
        var problems = new List<BenchProblem>();
        foreach (var field in Fields)
        {
            if (Asks(field, input) && BenchProblem.Of(field, input.Find(field.Id)) is { } problem)
            {
                problems.Add(problem);
            }
        }

        foreach (var choice in Choices)
        {
            if (input.FindChoice(choice.Id) is { } chosen && !choice.Options.Contains(chosen, StringComparer.Ordinal))
            {
                problems.Add(new BenchProblem(choice.Id, Statement.Of("bench.problem.choice", ("value", chosen))));
            }
        }

        if (problems.Count > 0)
        {
            return new BenchOutcome(null, problems);
        }

        try
        {
            return new BenchOutcome(Compute(input.With(this)), []);
        }
        catch (BenchException e)
        {
            return new BenchOutcome(null, [new BenchProblem(e.Field, e.Says)]);
        }
    }

    /// <summary>Whether a figure is asked for with what is chosen.</summary>
    public bool Asks(BenchField field, BenchInput input) => Asks(field.When, input);

    /// <summary>Whether a choice is asked for with what else is chosen.</summary>
    public bool Asks(BenchChoice choice, BenchInput input) => Asks(choice.When, input);

    /// <summary>
    /// How much the first result changes for a nudge of each field, in the unit the field was typed in: what is worth measuring well. Fields it does not hang on are left out.
    /// </summary>
    /// <param name="input">What was typed.</param>
    /// <param name="shown">Unit in which a result given in another is shown; null for the unit it is given in.</param>
    public IReadOnlyList<BenchSensitivity> Sensitivities(BenchInput input, Func<Unit, Unit>? shown = null)
    {
        var found = new List<BenchSensitivity>();
        if (Solve(input).Answer is not { Results: [{ Value: { } before }, ..] })
        {
            return found;
        }

        foreach (var field in Fields)
        {
            if (
                field.Nudge != 0
                && Asks(field, input)
                && input.Find(field.Id) is { } amount
                && Solve(input.And(field.Id, Nudged(field, amount))).Answer is { Results: [{ Value: { } after }, ..] }
                && Math.Abs(after.SI - before.SI) > Rounding * Math.Abs(before.SI)
            )
            {
                // Turned first, then subtracted: a difference of two temperatures is no temperature.
                var unit = shown?.Invoke(after.Unit) ?? after.Unit;
                found.Add(
                    new BenchSensitivity(field.Id, Step(field, amount.Unit), new Amount(after.In(unit).Value - before.In(unit).Value, unit))
                );
            }
        }

        return found;
    }

    /// <summary>The first result along <see cref="CurveOver"/>, from its least to its most or three times where it stands; empty where there is no curve.</summary>
    public IReadOnlyList<(Amount At, Amount Result)> Curve(BenchInput input)
    {
        var points = new List<(Amount At, Amount Result)>(CurvePoints);
        if (CurveOver is null || Solve(input).Answer is null || input.Find(CurveOver) is not { } here)
        {
            return points;
        }

        var field = Fields.First(f => f.Id == CurveOver);
        var at = here.In(field.Unit).Value;
        var (low, high) = (Math.Max(field.Low, Math.Min(0, at)), Math.Min(field.High, at > 0 ? 3 * at : field.High));
        for (var i = 0; i < CurvePoints; i++)
        {
            var x = new Amount(low + ((high - low) * i / (CurvePoints - 1)), field.Unit).In(here.Unit);
            if (Solve(input.And(CurveOver, x)).Answer is { Results: [{ Value: { } y }, ..] })
            {
                points.Add((x, y));
            }
        }

        return points;
    }

    private bool Asks(BenchWhen? when, BenchInput input) =>
        when is null
        || when.Options.Contains(input.FindChoice(when.Choice) ?? Choices.First(c => c.Id == when.Choice).Usual, StringComparer.Ordinal);

    private static Amount Step(BenchField field, Unit unit) =>
        new(unit == field.Unit ? field.Nudge : Round(unit.FromSI(field.Unit.ToSI(field.Nudge)) - unit.FromSI(field.Unit.ToSI(0))), unit);

    // The nearest 1, 2 or 5 of its power of ten: nobody turns a valve by 3.785 litres.
    private static double Round(double step)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(step)));
        return power
            * (
                (step / power) switch
                {
                    < 1.5 => 1,
                    < 3.5 => 2,
                    < 7.5 => 5,
                    _ => 10,
                }
            );
    }

    private static Amount Nudged(BenchField field, Amount amount) => amount with { Value = amount.Value + Step(field, amount.Unit).Value };
}

/// <summary>What came of asking a tool.</summary>
/// <param name="Answer">Its answer; null while something is missing or cannot be.</param>
/// <param name="Problems">What, and how to mend it.</param>
public sealed record BenchOutcome(BenchAnswer? Answer, IReadOnlyList<BenchProblem> Problems);

/// <summary>How the first result hangs on a field.</summary>
/// <param name="Field">Field.</param>
/// <param name="Step">Change of it.</param>
/// <param name="Change">Change of the first result.</param>
public sealed record BenchSensitivity(string Field, Amount Step, Amount Change);
