using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Machines;

/// <summary>
/// Reads a reading as it is typed: <c>KIND[@PART]=VALUE</c> and, parted by semicolons, <c>from=</c>, <c>to=</c>, <c>over=</c> and <c>racks=</c>; for example
/// <c>heatUpTime@wash=213 s; from=140 F; to=160 F</c>.
/// </summary>
internal static class TypedReading
{
    private const string Option = "--reading";

    public static MachineReading Read(string text, DateOnly on, Words words)
    {
        var pieces = text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var (name, value) = Pair(pieces.Length > 0 ? pieces[0] : "", words);
        var (id, part) = name.Split('@', 2) is [var i, var p] ? (i, p) : (name, null);
        var kind =
            ReadingKinds.Find(id) ?? throw new UsageException(CommandLine.NotAmong(words, Option, id, ReadingKinds.All.Select(k => k.Id)));
        var reading = new MachineReading(id, Amount(value, kind.Unit, words), on) { Part = part };
        foreach (var piece in pieces.Skip(1))
        {
            var (key, typed) = Pair(piece, words);
            reading = key switch
            {
                "from" => reading with { From = Amount(typed, Units.Fahrenheit, words) },
                "to" => reading with { To = Amount(typed, Units.Fahrenheit, words) },
                "over" => reading with { Over = Amount(typed, Units.Second, words) },
                "racks" => reading with { RacksPerHour = Number(typed, words) },
                _ => throw new UsageException(CommandLine.NotAmong(words, Option, key, ["from", "to", "over", "racks"])),
            };
        }

        return reading;
    }

    private static (string Key, string Value) Pair(string text, Words words) =>
        text.Split('=', 2) is [{ Length: > 0 } key, { Length: > 0 } value]
            ? (key.Trim(), value.Trim())
            : throw new UsageException(words.Say("cli.error.reading", ("value", text)));

    private static Amount Amount(string text, Unit unit, Words words) =>
        AmountText.TryParse(text, unit.Dimension, out var amount, out var problem)
            ? amount
            : throw new UsageException(
                words.Say(
                    "cli.error.option",
                    ("option", Option),
                    ("problem", words.Say(problem!.Key, ("text", problem.Text), ("example", $"20 {unit.Symbol}")))
                )
            );

    private static double Number(string text, Words words) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var n) && n > 0 && double.IsFinite(n)
            ? n
            : throw new UsageException(words.Say("cli.error.not-a-number", ("option", Option), ("value", text)));
}
