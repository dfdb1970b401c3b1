using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>Which columns tell the time, and how.</summary>
internal static class ClockChoice
{
    /// <summary>Chooses from the sampled columns.</summary>
    /// <exception cref="UnreadableFileException">No column tells the time.</exception>
    public static (Clock Clock, string Value, Statement Because, DecisionBasis Basis) Choose(
        IReadOnlyList<ColumnSample> columns,
        IReadOnlyList<string> names,
        RowShape shape
    )
    {
        if (shape is RowShape.KindShape)
        {
            return (
                new Clock
                {
                    Kind = ClockKind.DayOfYear,
                    Column = 1,
                    Second = 2,
                    Third = 3,
                },
                "day-of-year",
                Statement.Of("files.clock-day-of-year"),
                DecisionBasis.Inferred
            );
        }

        return Stamps(columns)
            ?? DayOfYear(columns, names)
            ?? Epoch(columns, shape)
            ?? Serial(columns, names)
            ?? ElapsedText(columns)
            ?? Elapsed(columns, names)
            ?? (
                columns.Any(c => c.Of(CellKind.Hashes) * 2 > c.Filled && c.Filled > 0)
                    ? throw new UnreadableFileException(Statement.Of("files.stamps-hidden"))
                    : throw new UnreadableFileException(Statement.Of("files.no-time"))
            );
    }

    private static (Clock, string, Statement, DecisionBasis)? Stamps(IReadOnlyList<ColumnSample> columns)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            if (columns[i].Of(CellKind.DateAndTime) > 0 && columns[i].Mostly(CellKind.DateAndTime, CellKind.Hashes, CellKind.Date))
            {
                var half = i + 1 < columns.Count && columns[i + 1].Mostly(CellKind.Half);
                var clock = new Clock
                {
                    Kind = ClockKind.Stamp,
                    Column = i,
                    Second = half ? i + 1 : -1,
                };
                return (clock, "stamp", Statement.Of("files.clock-stamp", ("column", (long)(i + 1))), DecisionBasis.Read);
            }
        }

        for (var i = 0; i < columns.Count; i++)
        {
            if (!columns[i].Mostly(CellKind.Date))
            {
                continue;
            }

            for (var t = 0; t < columns.Count; t++)
            {
                if (t != i && columns[t].Mostly(CellKind.Time))
                {
                    var half = t + 1 < columns.Count && columns[t + 1].Mostly(CellKind.Half);
                    var clock = new Clock
                    {
                        Kind = ClockKind.Stamp,
                        Column = i,
                        Second = t,
                        Third = half ? t + 1 : -1,
                    };
                    return (
                        clock,
                        "date-and-time",
                        Statement.Of("files.clock-two-columns", ("date", (long)(i + 1)), ("time", (long)(t + 1))),
                        DecisionBasis.Read
                    );
                }
            }

            return (
                new Clock { Kind = ClockKind.Stamp, Column = i },
                "date",
                Statement.Of("files.clock-date-only", ("column", (long)(i + 1))),
                DecisionBasis.Read
            );
        }

        return null;
    }

    private static (Clock, string, Statement, DecisionBasis)? DayOfYear(IReadOnlyList<ColumnSample> columns, IReadOnlyList<string> names)
    {
        for (var i = 0; i + 2 < columns.Count; i++)
        {
            if (
                Whole(columns[i], 1980, 2200)
                && Whole(columns[i + 1], 1, 366)
                && Whole(columns[i + 2], 0, 2400)
                && columns[i].StepsDown == 0
                && (
                    names.Count == 0
                    || ColumnWords.IsTime(names[Math.Min(i, names.Count - 1)])
                    || names[i].Contains("ear", StringComparison.Ordinal)
                )
            )
            {
                return (
                    new Clock
                    {
                        Kind = ClockKind.DayOfYear,
                        Column = i,
                        Second = i + 1,
                        Third = i + 2,
                    },
                    "day-of-year",
                    Statement.Of("files.clock-day-of-year"),
                    DecisionBasis.Inferred
                );
            }
        }

        return null;
    }

    private static bool Whole(ColumnSample column, double low, double high) =>
        column.Mostly(CellKind.Number) && column.WithDecimals == 0 && column.Minimum >= low && column.Maximum <= high;

    private static (Clock, string, Statement, DecisionBasis)? Epoch(IReadOnlyList<ColumnSample> columns, RowShape shape)
    {
        for (var n = 0; n < columns.Count; n++)
        {
            var i = shape is RowShape.PairShape ? columns.Count - 1 - n : n;
            var column = columns[i];
            if (!column.Mostly(CellKind.Number) || (column.StepsUp == 0 && shape is not RowShape.PairShape && column.Filled > 1))
            {
                continue;
            }

            double scale =
                column.Minimum >= 9e8 && column.Maximum < 4.3e9 ? 1000
                : column.Minimum >= 9e11 && column.Maximum < 4.3e12 ? 1
                : column.Minimum >= 9e14 && column.Maximum < 4.3e15 ? 0.001
                : 0;
            if (scale > 0)
            {
                return (
                    new Clock
                    {
                        Kind = ClockKind.Epoch,
                        Column = i,
                        Scale = scale,
                        Offset = 0,
                    },
                    scale == 1000 ? "epoch-seconds" : "epoch-milliseconds",
                    Statement.Of("files.clock-epoch", ("column", (long)(i + 1))),
                    DecisionBasis.Inferred
                );
            }
        }

        return null;
    }

    private static (Clock, string, Statement, DecisionBasis)? Serial(IReadOnlyList<ColumnSample> columns, IReadOnlyList<string> names)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            var column = columns[i];
            if (
                !column.Mostly(CellKind.Number)
                || column.Minimum < 20_000
                || column.Maximum > 80_000
                || column.StepsDown > column.StepsUp / 10
            )
            {
                continue;
            }

            var named = i < names.Count && ColumnWords.IsTime(names[i]);
            var seconds =
                i + 1 < columns.Count
                && columns[i + 1].Mostly(CellKind.Number)
                && columns[i + 1] is { Minimum: >= 0, Maximum: < 86_401 } next
                && next.StepsUp > 0
                && (next.Maximum > 1000 || (i + 1 < names.Count && ColumnWords.IsTime(names[i + 1])));
            if (seconds || column.WithDecimals > 0 || named)
            {
                return (
                    new Clock
                    {
                        Kind = ClockKind.SerialDays,
                        Column = i,
                        Second = seconds ? i + 1 : -1,
                    },
                    seconds ? "serial-days-and-seconds" : "serial-days",
                    Statement.Of("files.clock-serial", ("column", (long)(i + 1))),
                    DecisionBasis.Assumed
                );
            }
        }

        return null;
    }

    private static (Clock, string, Statement, DecisionBasis)? ElapsedText(IReadOnlyList<ColumnSample> columns)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            if (columns[i].Mostly(CellKind.Time))
            {
                return (
                    new Clock { Kind = ClockKind.ElapsedText, Column = i },
                    "elapsed-hms",
                    Statement.Of("files.clock-elapsed", ("column", (long)(i + 1))),
                    DecisionBasis.Inferred
                );
            }
        }

        return null;
    }

    private static (Clock, string, Statement, DecisionBasis)? Elapsed(IReadOnlyList<ColumnSample> columns, IReadOnlyList<string> names)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            var column = columns[i];
            if (!column.Mostly(CellKind.Number) || column.StepsDown * 20 > column.StepsUp || (column.StepsUp == 0 && column.Filled > 1))
            {
                continue;
            }

            var name = i < names.Count ? names[i] : "";
            if (ColumnWords.IsTime(name))
            {
                var (unit, scale) = ScaleOf(name);
                return (
                    new Clock
                    {
                        Kind = ClockKind.Elapsed,
                        Column = i,
                        Scale = scale,
                    },
                    "elapsed-" + unit,
                    Statement.Of("files.clock-count", ("column", (long)(i + 1)), ("name", name)),
                    unit == "s" && !name.Contains('s', StringComparison.OrdinalIgnoreCase) ? DecisionBasis.Assumed : DecisionBasis.Read
                );
            }
        }

        var first = columns.Count > 1 ? columns[0] : null;
        if (
            names.Count == 0
            && first is not null
            && first.Mostly(CellKind.Number)
            && first.StepsDown == 0
            && first.StepsUp > 0
            && first.StepsOfOne < first.StepsUp
        )
        {
            return (
                new Clock { Kind = ClockKind.Elapsed, Column = 0 },
                "elapsed-s",
                Statement.Of("files.clock-first-column"),
                DecisionBasis.Assumed
            );
        }

        return null;
    }

    private static (string Unit, double Scale) ScaleOf(string name)
    {
        var words = UnitWords.Words(name);
        return words.Contains("ms") || words.Contains("milliseconds") || words.Contains("millis") ? ("ms", 1)
            : words.Contains("min") || words.Contains("mins") || words.Contains("minutes") || words.Contains("minutos") ? ("min", 60_000)
            : words.Contains("h") || words.Contains("hr") || words.Contains("hrs") || words.Contains("hours") || words.Contains("horas")
                ? ("h", 3_600_000)
            : words.Contains("days") || words.Contains("day") ? ("d", 86_400_000)
            : ("s", 1000);
    }
}
