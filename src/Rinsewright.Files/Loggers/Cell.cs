namespace Rinsewright.Files.Loggers;

/// <summary>What a cell can be, before its column is known.</summary>
internal enum CellKind
{
    Empty,
    Number,
    DateAndTime,
    Date,
    Time,

    /// <summary>A word of the morning or afternoon alone.</summary>
    Half,

    /// <summary>Words or dashes for "no reading".</summary>
    Fault,

    /// <summary>Letters without digits.</summary>
    Word,

    /// <summary>A spreadsheet's "column too narrow".</summary>
    Hashes,

    /// <summary>Anything else.</summary>
    Text,
}

/// <summary>Tells what a cell can be.</summary>
internal static class Cell
{
    private static readonly FaultMarks Known = new(null);

    /// <summary>Kind of a trimmed cell.</summary>
    public static CellKind KindOf(string cell)
    {
        if (cell.Length == 0)
        {
            return CellKind.Empty;
        }

        if (NumberText.FormOf(cell) != NumberForm.None)
        {
            return CellKind.Number;
        }

        if (cell.Length >= 4 && !cell.AsSpan().ContainsAnyExcept('#'))
        {
            return CellKind.Hashes;
        }

        if (StampText.TryParse(cell, out var parts))
        {
            return parts.HasDate && parts.HasTime ? CellKind.DateAndTime
                : parts.HasDate ? CellKind.Date
                : CellKind.Time;
        }

        if (WithUnit.TryTake(cell, out _, out _))
        {
            return CellKind.Number;
        }

        if (cell.Length <= 6 && DayHalf.Of(cell) is not null)
        {
            return CellKind.Half;
        }

        return Known.IsWord(cell) ? CellKind.Fault
            : cell.AsSpan().ContainsAnyInRange('0', '9') ? CellKind.Text
            : CellKind.Word;
    }
}

/// <summary>Numbers with their unit behind them in the same cell: <c>71.6 °C</c>.</summary>
internal static class WithUnit
{
    /// <summary>Takes the number and the unit's UCUM code apart.</summary>
    public static bool TryTake(string cell, out string number, out string unit)
    {
        number = unit = "";
        var last = cell.AsSpan().LastIndexOfAnyInRange('0', '9');
        if (last < 0 || last == cell.Length - 1 || NumberText.FormOf(cell.AsSpan(0, last + 1)) == NumberForm.None)
        {
            return false;
        }

        if (UnitWords.Exact(cell[(last + 1)..]) is not { } found)
        {
            return false;
        }

        (number, unit) = (cell[..(last + 1)], found);
        return true;
    }
}
