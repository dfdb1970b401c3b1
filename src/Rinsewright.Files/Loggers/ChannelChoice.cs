using System.Globalization;
using Rinsewright.Contracts;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>A column that is read as a temperature channel.</summary>
internal sealed record ChannelPlan(int Column, string Name, Unit Unit, MeasuringPoint Role, char Mark);

/// <summary>Which columns are temperature channels, in which unit, under which name and at which place.</summary>
internal sealed class ChannelChoice(
    Layout layout,
    IReadOnlyList<List<string?>> rows,
    IReadOnlyList<ColumnSample> columns,
    Clock clock,
    DialectOverridesView given,
    List<Decision> decisions
)
{
    private readonly List<Decision> own = [];

    /// <summary>Columns that carry the unit of each row, with that unit.</summary>
    public List<(int Column, string Unit)> UnitColumns { get; } = [];

    /// <summary>Chooses the channels.</summary>
    /// <param name="marks">Decimal mark of each column.</param>
    /// <exception cref="UnreadableFileException">No column can be a temperature.</exception>
    public List<ChannelPlan> Choose(IReadOnlyList<char> marks)
    {
        FindUnitColumns();
        var senses = Enumerable.Range(0, columns.Count).Select(Sense).ToList();
        var chosen = new List<int>();
        foreach (var wanted in (ReadOnlySpan<ColumnSense>)[ColumnSense.Temperature, ColumnSense.Unknown, ColumnSense.OwnTemperature])
        {
            chosen =
            [
                .. Enumerable
                    .Range(0, columns.Count)
                    .Where(i => IsGiven(i) || (IsNumeric(i) && senses[i].Sense == wanted && !IsIgnored(i))),
            ];
            if (wanted == ColumnSense.Unknown)
            {
                chosen = Likely(chosen);
            }

            if (chosen.Count > 0)
            {
                break;
            }
        }

        for (var i = 0; i < columns.Count; i++)
        {
            if (!chosen.Contains(i) && !clock.Uses(i) && columns[i].Filled > 0 && !IsUnit(i) && !own.Exists(d => d.Id == $"channel[{i}]"))
            {
                own.Add(NotUsed(i, WhyNot(i, senses[i])));
            }
        }

        if (chosen.Count == 0)
        {
            throw NoTemperature(senses);
        }

        RefuseSplitDecimals(chosen);
        var plans = chosen.ConvertAll(c => Plan(c, chosen, marks[c]));
        decisions.AddRange(own.OrderBy(d => ColumnOf(d.Id)));
        return plans;
    }

    /// <summary>The heading of a column; empty where it has none.</summary>
    public string Heading(int column) => column < layout.Names.Count ? layout.Names[column] : "";

    private string UnitText(int column) => column < layout.Units.Count ? layout.Units[column] : "";

    private (ColumnSense Sense, string? Quantity) Sense(int column)
    {
        var (sense, quantity) = ColumnWords.Sense(Heading(column), UnitText(column));
        if (
            sense == ColumnSense.Unknown
            && UnitColumns.Count > 0
            && columns[column].Mostly(CellKind.Number)
            && Heading(column).Equals("Value", StringComparison.OrdinalIgnoreCase)
        )
        {
            return (ColumnSense.Temperature, null);
        }

        return (sense, quantity);
    }

    private bool IsNumeric(int column)
    {
        var c = columns[column];
        if (clock.Uses(column) || c.Filled == 0)
        {
            return false;
        }

        var numbers = c.Of(CellKind.Number);
        return numbers == 0
            ? c.Mostly(CellKind.Fault) && ColumnWords.Sense(Heading(column), UnitText(column)).Sense == ColumnSense.Temperature
            : numbers * 2 >= c.Filled || (!IsUnit(column) && c.Mostly(CellKind.Number, CellKind.Fault, CellKind.Word, CellKind.Half));
    }

    /// <summary>Whether a column carries units.</summary>
    public bool IsUnit(int column) => UnitColumns.Exists(u => u.Column == column);

    private bool IsIgnored(int column) => DialectOverridesView.IsIgnored(given.Channel(column));

    private bool IsGiven(int column) =>
        given.Channel(column) is { } channel
        && !IsIgnored(column)
        && (channel.Role is not null || channel.Unit is not null)
        && !clock.Uses(column);

    // Without a word to go by: columns with decimals, or all that do not count rows or stand still, except one behind an unknown time-zone code.
    private List<int> Likely(List<int> unknown)
    {
        var kept = unknown.FindAll(i => IsGiven(i) || columns[i].WithDecimals > 0 || (columns[i].OnlyFaults && layout.Names.Count == 0));
        if (kept.Exists(i => IsGiven(i) || columns[i].WithDecimals > 0))
        {
            return kept;
        }

        return unknown.FindAll(i =>
            IsGiven(i)
            || !(columns[i].StepsOfOne > 0 && columns[i].StepsOfOne == columns[i].StepsUp && columns[i].StepsDown == 0)
                && columns[i].Maximum != columns[i].Minimum
            || (columns[i].Filled == 1 && i == unknown[^1])
        );
    }

    private void FindUnitColumns()
    {
        for (var i = 0; i < columns.Count; i++)
        {
            if (
                columns[i].Filled > 0
                && columns[i].Of(CellKind.Number) == 0
                && columns[i].Distinct.Count <= 2
                && columns[i].Distinct.All(d => UnitWords.Exact(d) is not null)
                && columns[i].Distinct.Count > 0
                && !Heading(i).Contains("type", StringComparison.OrdinalIgnoreCase)
            )
            {
                UnitColumns.Add((i, UnitWords.Exact(rows.Select(r => i < r.Count ? r[i] ?? "" : "").First(c => c.Length > 0))!));
            }
        }
    }

    // "71,6" in a file separated by commas: a column of digits without a name behind numbers without decimals.
    private void RefuseSplitDecimals(List<int> chosen)
    {
        var nameless = Enumerable.Range(layout.Names.Count, Math.Max(0, columns.Count - layout.Names.Count)).ToList();
        if (
            layout.Separator == ','
            && layout.Names.Count > 0
            && nameless.Count > 0
            && chosen.TrueForAll(c => columns[c].WithDecimals == 0)
            && nameless.TrueForAll(c =>
                columns[c].Of(CellKind.Number) * 10 >= layout.Rows.Count * 8
                && columns[c] is { WithDecimals: 0, Minimum: >= 0, Maximum: < 1000 }
            )
            && given.DecimalMark is null
        )
        {
            throw new UnreadableFileException(
                Statement.Of("files.decimal-split", ("names", (long)layout.Names.Count), ("fields", (long)layout.Width))
            );
        }
    }

    private ChannelPlan Plan(int column, List<int> chosen, char mark)
    {
        var heading = Heading(column);
        var channel = given.Channel(column);
        var name = channel?.Name ?? (heading.Length > 0 ? heading : string.Create(CultureInfo.InvariantCulture, $"#{column + 1}"));
        var twins = chosen.Count(c => string.Equals(Heading(c), heading, StringComparison.Ordinal) && heading.Length > 0);
        if (twins > 1 && channel?.Name is null)
        {
            name = string.Create(CultureInfo.InvariantCulture, $"{heading} #{column + 1}");
            own.Add(
                new Decision(
                    $"name[{column}]",
                    name,
                    Statement.Of("files.name-twice", ("heading", heading), ("column", (long)(column + 1))),
                    DecisionBasis.Assumed,
                    []
                )
            );
        }

        var (sense, _) = Sense(column);
        var why =
            IsGiven(column) ? (Statement.Of("files.given"), DecisionBasis.Given)
            : sense == ColumnSense.Temperature ? (Statement.Of("files.channel-named", ("heading", heading)), DecisionBasis.Read)
            : (Statement.Of("files.channel-likely", ("column", (long)(column + 1))), DecisionBasis.Assumed);
        own.Add(new Decision($"channel[{column}]", name, why.Item1, why.Item2, ["ignore"]));
        return new ChannelPlan(column, name, UnitOf(column), RoleOf(column, heading), mark);
    }

    private MeasuringPoint RoleOf(int column, string heading)
    {
        if (DialectOverridesView.Role(given.Channel(column)) is { } role)
        {
            own.Add(new Decision($"role[{column}]", Wire.Name(role), Statement.Of("files.given"), DecisionBasis.Given, []));
            return role;
        }

        role = ColumnWords.RoleOf(heading);
        if (role != MeasuringPoint.Unknown)
        {
            own.Add(
                new Decision(
                    $"role[{column}]",
                    Wire.Name(role),
                    Statement.Of("files.role-named", ("heading", heading)),
                    DecisionBasis.Read,
                    [.. Enum.GetValues<MeasuringPoint>().Where(p => p != role && p != MeasuringPoint.Unknown).Select(Wire.Name), "ignore"]
                )
            );
        }

        return role;
    }

    private Unit UnitOf(int column)
    {
        var (code, because, basis) = FindUnit(column);
        own.Add(new Decision($"unit[{column}]", code, because, basis, [.. UnitWords.Temperatures.Where(u => u != code)]));
        return Units.Find(code)!;
    }

    private (string Code, Statement Because, DecisionBasis Basis) FindUnit(int column)
    {
        var said = given.Channel(column)?.Unit ?? given.Unit;
        if (said is not null)
        {
            return (
                UnitWords.Temperatures.Contains(said) ? said : UnitWords.Exact(said)!,
                Statement.Of("files.given"),
                DecisionBasis.Given
            );
        }

        if (UnitWords.Exact(UnitText(column)) is { } units)
        {
            return (units, Statement.Of("files.unit-row", ("text", UnitText(column))), DecisionBasis.Read);
        }

        if (UnitWords.InHeading(Heading(column)) is { } heading)
        {
            return (heading, Statement.Of("files.unit-heading", ("heading", Heading(column))), DecisionBasis.Read);
        }

        if (UnitColumns.Count > 0)
        {
            // The unit stands beside its value: the nearest in front of it, else behind it.
            var near = UnitColumns.FindLast(u => u.Column < column) is { Unit: not null } before ? before : UnitColumns[0];
            return (near.Unit, Statement.Of("files.unit-column", ("column", (long)(near.Column + 1))), DecisionBasis.Read);
        }

        foreach (var row in rows)
        {
            if (column < row.Count && row[column] is { } text && WithUnit.TryTake(text, out _, out var cell))
            {
                return (cell, Statement.Of("files.unit-cell", ("text", text)), DecisionBasis.Read);
            }
        }

        if (InPreamble() is { } preamble)
        {
            return (preamble.Unit, Statement.Of("files.unit-preamble", ("line", Quote.Short(preamble.Line))), DecisionBasis.Read);
        }

        var title = given.Channel(column)?.Name ?? Heading(column);
        return (
            "Cel",
            title.Length > 0
                ? Statement.Of("files.unit-open", ("column", (long)(column + 1)), ("heading", Quote.Short(title)))
                : Statement.Of(
                    "files.unit-open-nameless",
                    ("column", (long)(column + 1)),
                    ("first", Quote.Short(rows.Select(r => r.ElementAtOrDefault(column)).FirstOrDefault(c => c is { Length: > 0 }) ?? ""))
                ),
            DecisionBasis.Open
        );
    }

    // Believed only where every line that names a unit names the same one.
    private (string Unit, string Line)? InPreamble()
    {
        (string Unit, string Line)? found = null;
        foreach (var line in layout.Preamble)
        {
            var at = line.IndexOfAny([':', ',', ';', '=', '\t']);
            var named =
                at > 0 && ColumnWords.Sense(line[..at], "").Sense == ColumnSense.Temperature
                || line.Contains("unit", StringComparison.OrdinalIgnoreCase);
            var unit =
                UnitWords.Sign(line)
                ?? (named ? UnitWords.Exact(line[(at + 1)..].Trim(' ', ',', ';', '\t', '"')) ?? UnitWords.InHeading(line) : null);
            if (unit is not null)
            {
                if (found is { } other && other.Unit != unit)
                {
                    return null;
                }

                found = (unit, line);
            }
        }

        return found;
    }

    private Decision NotUsed(int column, Statement because) =>
        new(
            $"channel[{column}]",
            "ignore",
            because,
            IsIgnored(column) ? DecisionBasis.Given : DecisionBasis.Inferred,
            [.. Enum.GetValues<MeasuringPoint>().Where(p => p != MeasuringPoint.Unknown).Select(Wire.Name)]
        );

    private Statement WhyNot(int column, (ColumnSense Sense, string? Quantity) sense)
    {
        var heading = Heading(column);
        return IsIgnored(column) ? Statement.Of("files.given")
            : sense.Sense is ColumnSense.Other or ColumnSense.OwnTemperature
                ? Statement.Of("files.channel-other", ("heading", heading), ("quantity", Statement.Of("files.quantity-" + sense.Quantity)))
            : !IsNumeric(column) ? Statement.Of("files.channel-no-numbers", ("column", (long)(column + 1)))
            : layout.Names.Count == 0 ? Statement.Of("files.channel-whole", ("column", (long)(column + 1)))
            : Statement.Of("files.channel-not-named", ("column", (long)(column + 1)));
    }

    private UnreadableFileException NoTemperature(List<(ColumnSense Sense, string? Quantity)> senses)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            if (
                IsNumeric(i)
                && senses[i].Sense == ColumnSense.Other
                && senses[i].Quantity is not ("record-number" or "event" or "state" or "raw")
            )
            {
                return new UnreadableFileException(
                    Statement.Of(
                        "files.not-temperature",
                        ("heading", Heading(i)),
                        ("quantity", Statement.Of("files.quantity-" + senses[i].Quantity)),
                        ("column", (long)i)
                    )
                );
            }
        }

        var empty =
            senses.Exists(s => s.Sense == ColumnSense.Temperature)
            || Enumerable
                .Range(0, layout.Names.Count)
                .Any(i => ColumnWords.Sense(Heading(i), UnitText(i)).Sense == ColumnSense.Temperature);
        return new UnreadableFileException(
            empty ? Statement.Of("files.no-readings", ("line", (long)layout.HeadingLine)) : Statement.Of("files.no-channel")
        );
    }

    private static int ColumnOf(string id) =>
        int.Parse(id[(id.IndexOf('[', StringComparison.Ordinal) + 1)..^1], CultureInfo.InvariantCulture);
}
