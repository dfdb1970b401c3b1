using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>The decimal mark of each column, from all its cells: <c>100,000</c> beside <c>11,953</c> is a hundred with a decimal comma.</summary>
internal sealed class DecimalMarks(int columns)
{
    private readonly long[,] forms = new long[columns, Enum.GetValues<NumberForm>().Length];

    /// <summary>Takes one cell.</summary>
    public void Add(int column, string cell)
    {
        if (column < columns)
        {
            var text = WithUnit.TryTake(cell, out var number, out _) ? number : cell;
            forms[column, (int)NumberText.FormOf(text)]++;
        }
    }

    /// <summary>Whether any number of the column showed a mark.</summary>
    public bool Shows(int column) => Points(column) + Commas(column) > 0;

    /// <summary>The mark of each column and what it says of the file.</summary>
    /// <param name="given">What the person said.</param>
    /// <param name="used">Columns whose marks count for the decision.</param>
    public (char[] Marks, Decision Decision) Decide(char? given, Func<int, bool> used)
    {
        var marks = new char[columns];
        long points = 0,
            commas = 0;
        for (var i = 0; i < columns; i++)
        {
            points += used(i) ? Points(i) : 0;
            commas += used(i) ? Commas(i) : 0;
        }

        var file = commas > points ? ',' : '.';
        for (var i = 0; i < columns; i++)
        {
            marks[i] =
                given
                ?? (
                    Commas(i) > Points(i) ? ','
                    : Points(i) > 0 ? '.'
                    : file
                );
        }

        var (because, basis) =
            given is not null ? (Statement.Of("files.given"), DecisionBasis.Given)
            : points == 0 && commas == 0 ? (Statement.Of("files.decimal-none"), DecisionBasis.Assumed)
            : points > 0 && commas > 0
                ? (Statement.Of("files.decimal-mixed", ("points", points), ("commas", commas)), DecisionBasis.Inferred)
            : (Statement.Of("files.decimal", ("count", Math.Max(points, commas))), DecisionBasis.Inferred);
        var mark = given ?? file;
        return (marks, new Decision("decimal-mark", mark == ',' ? "comma" : "point", because, basis, [mark == ',' ? "point" : "comma"]));
    }

    private long Points(int column) => forms[column, (int)NumberForm.Point] + forms[column, (int)NumberForm.CommasThenPoint];

    private long Commas(int column) => forms[column, (int)NumberForm.Comma] + forms[column, (int)NumberForm.PointsThenComma];
}
