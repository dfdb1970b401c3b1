namespace Rinsewright.Files.Loggers;

/// <summary>What the sampled cells of one column are like.</summary>
internal sealed class ColumnSample
{
    private readonly int[] kinds = new int[Enum.GetValues<CellKind>().Length];
    private readonly HashSet<string> distinct = new(StringComparer.Ordinal);
    private double last = double.NaN;

    public int Cells { get; private set; }

    public int Filled => Cells - kinds[(int)CellKind.Empty];

    public double Minimum { get; private set; } = double.PositiveInfinity;

    public double Maximum { get; private set; } = double.NegativeInfinity;

    /// <summary>Steps down, and steps by something else than one, from number to number.</summary>
    public int StepsDown { get; private set; }

    public int StepsUp { get; private set; }

    public int StepsOfOne { get; private set; }

    public int WithDecimals { get; private set; }

    public int FewestDecimals { get; private set; } = int.MaxValue;

    /// <summary>Whether every number so far is one a fault mark uses.</summary>
    public bool OnlyFaults { get; private set; } = true;

    public IReadOnlyCollection<string> Distinct => distinct;

    public int Of(CellKind kind) => kinds[(int)kind];

    /// <summary>Whether almost all filled cells are of a kind; a few damaged rows do not change what a column is.</summary>
    public bool Mostly(params ReadOnlySpan<CellKind> any)
    {
        var count = 0;
        foreach (var kind in any)
        {
            count += kinds[(int)kind];
        }

        return Filled > 0 && count * 10 >= Filled * 6;
    }

    /// <summary>Takes one cell.</summary>
    public void Add(string cell, FaultMarks marks)
    {
        var kind = Cell.KindOf(cell);
        Cells++;
        kinds[(int)kind]++;
        if (distinct.Count < 9)
        {
            distinct.Add(cell);
        }

        if (kind != CellKind.Number)
        {
            return;
        }

        var text = WithUnit.TryTake(cell, out var number, out _) ? number : cell;
        var mark = text.LastIndexOfAny(['.', ',']);
        if (!NumberText.TryParse(text, mark >= 0 ? text[mark] : '.', out var value))
        {
            return;
        }

        if (marks.IsValue(value))
        {
            return;
        }

        OnlyFaults = false;
        WithDecimals += mark >= 0 ? 1 : 0;
        FewestDecimals = mark >= 0 && mark < text.Length - 1 ? Math.Min(FewestDecimals, text.Length - mark - 1) : FewestDecimals;
        Minimum = Math.Min(Minimum, value);
        Maximum = Math.Max(Maximum, value);
        if (!double.IsNaN(last))
        {
            StepsDown += value < last ? 1 : 0;
            StepsUp += value > last ? 1 : 0;
            StepsOfOne += value - last is > 0.9999 and < 1.0001 ? 1 : 0;
        }

        last = value;
    }
}
