using Rinsewright.Client.Machines;
using Rinsewright.Client.Parts;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Client.Bench;

/// <summary>What is typed into one field: the text, the unit at hand, and the amount they come to.</summary>
public sealed class BenchDraft(BenchField field, Unit unit)
{
    /// <summary>Text as typed.</summary>
    public string Text { get; private set; } = "";

    /// <summary>Unit of a bare number.</summary>
    public Unit Unit { get; private set; } = unit;

    /// <summary>What was typed, where it could be read.</summary>
    public Amount? Amount { get; private set; }

    /// <summary>Why it could not be read.</summary>
    public ParseProblem? Problem { get; private set; }

    /// <summary>Takes what was typed.</summary>
    public void Type(string text, string language)
    {
        Text = text;
        (Amount, Problem) = (null, null);
        if (string.IsNullOrWhiteSpace(text))
        {
            return;
        }

        if (AmountText.TryParse(text, field.Unit.Dimension, out var amount, out var problem, language == "es" ? ',' : null, Unit))
        {
            Amount = amount;
        }
        else
        {
            Problem = problem;
        }
    }

    /// <summary>Shows an amount, in the unit at hand.</summary>
    public void Show(Amount amount, string language)
    {
        Amount = amount.In(Unit);
        Text = DecimalText.Write(Math.Round(Amount.Value.Value, 6), 4, language);
        Problem = null;
    }

    /// <summary>Turns to another unit: what stands there is converted; what cannot be read stays.</summary>
    public void TurnTo(Unit unit, string language)
    {
        Unit = unit;
        if (Amount is { } amount)
        {
            Show(amount, language);
        }
        else
        {
            Type(Text, language);
        }
    }
}

/// <summary>What was typed into the tools, kept while the program is open: leaving a tool loses nothing.</summary>
public sealed class BenchDrafts
{
    private readonly Dictionary<string, BenchDraft> figures = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> choices = new(StringComparer.Ordinal);

    /// <summary>Machine the sums are for; null where they stand free.</summary>
    public KeptMachine? Machine { get; set; }

    /// <summary>Units at hand for a field.</summary>
    public static IReadOnlyList<Unit> UnitsOf(BenchField field) =>
        field.Unit == Units.One ? [field.Unit] : [.. Units.All.Where(u => u.Dimension == field.Unit.Dimension)];

    /// <summary>What is typed into a field; at first the usual figure, in the units the person reads in.</summary>
    public BenchDraft Of(BenchTool tool, BenchField field, Preferences preferences)
    {
        var key = $"{tool.Id}.{field.Id}";
        if (!figures.TryGetValue(key, out var draft))
        {
            draft = figures[key] = new BenchDraft(field, Shown.UnitFor(field.Unit, preferences.Units));
            if (field.Usual is { } usual)
            {
                draft.Show(new Amount(usual, field.Unit), preferences.Language);
            }
        }

        return draft;
    }

    /// <summary>What is chosen.</summary>
    public string Choice(BenchTool tool, BenchChoice choice) => choices.GetValueOrDefault($"{tool.Id}.{choice.Id}", choice.Usual);

    /// <summary>Chooses.</summary>
    public void Choose(BenchTool tool, BenchChoice choice, string option) => choices[$"{tool.Id}.{choice.Id}"] = option;

    /// <summary>Fills in figures and choices of a tool; what is not in <paramref name="input"/> stays as typed.</summary>
    public void Fill(BenchTool tool, BenchInput input, Preferences preferences)
    {
        foreach (var field in tool.Fields)
        {
            if (input.Find(field.Id) is { } amount)
            {
                Of(tool, field, preferences).Show(amount, preferences.Language);
            }
        }

        foreach (var choice in tool.Choices)
        {
            if (input.FindChoice(choice.Id) is { } option)
            {
                Choose(tool, choice, option);
            }
        }
    }

    /// <summary>Back to the usual figures of a tool.</summary>
    public void Forget(BenchTool tool)
    {
        foreach (var field in tool.Fields)
        {
            figures.Remove($"{tool.Id}.{field.Id}");
        }

        foreach (var choice in tool.Choices)
        {
            choices.Remove($"{tool.Id}.{choice.Id}");
        }
    }

    /// <summary>Everything typed into a tool that could be read.</summary>
    public BenchInput Input(BenchTool tool, Preferences preferences)
    {
        var input = BenchInput.Empty;
        foreach (var field in tool.Fields)
        {
            if (Of(tool, field, preferences).Amount is { } amount)
            {
                input = input.And(field.Id, amount);
            }
        }

        foreach (var choice in tool.Choices)
        {
            input = input.And(choice.Id, Choice(tool, choice));
        }

        return input;
    }
}
