using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Machines;

/// <summary>A figure in the file: <c>{ "value": 18.5, "unit": "[gal_us]", "basis": "measured", "on": "2026-11-20" }</c>, on one line.</summary>
internal static class FigureJson
{
    internal static readonly string[] AmountFields = ["value", "unit"];

    private static readonly string[] Fields = ["value", "unit", "basis", "source", "on"];

    internal static Figure<T>? Read<T>(JsonElement element, string path, Bounds bounds, Problems problems)
        where T : struct, IQuantity<T>
    {
        var amount = ReadAmount(element, path, T.Dimension, Fields, problems);
        if (element.ValueKind != JsonValueKind.Object)
        {
            return null;
        }

        var basis = Basis(element, path, problems);
        var source = Text(element, "source", path, problems);
        var on = Day(element, path, problems);
        if (on is not null && basis is Provenance.Typical or Provenance.DataPlate)
        {
            problems.Add($"{path}.on", "day-not-measured");
        }

        if (amount is not { } written || basis is not { } from)
        {
            return null;
        }

        // A value that cannot be keeps the typical one in its place, so that one slip is told once.
        return bounds.Check(written, path, problems) ? new Figure<T>(written, from, source, on) : null;
    }

    /// <summary>Value and unit of an object that has these fields.</summary>
    internal static Amount? ReadAmount(JsonElement element, string path, Dimension dimension, string[] fields, Problems problems)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            problems.Add(path, "not-a-figure", ("unit", Units.Of(dimension)[0].Ucum));
            return null;
        }

        problems.Twice(element, path);
        foreach (var property in element.EnumerateObject().Where(p => !fields.Contains(p.Name, StringComparer.Ordinal)))
        {
            problems.Add($"{path}.{property.Name}", "unknown-field", ("fields", string.Join(", ", fields)));
        }

        var unit = ReadUnit(element, path, dimension, problems);
        if (!element.TryGetProperty("value", out var value))
        {
            problems.Add($"{path}.value", "missing");
            return null;
        }

        if (value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out var number) || !double.IsFinite(number))
        {
            problems.Add($"{path}.value", "not-a-number");
            return null;
        }

        return unit is null ? null : new Amount(number, unit);
    }

    internal static FigureView View<T>(string path, string word, Figure<T> figure)
        where T : struct, IQuantity<T> => new(path, word, T.Dimension, figure.Written, figure.Basis, figure.Source, figure.On);

    internal static void Write<T>(Utf8JsonWriter writer, string name, Figure<T> figure)
        where T : struct, IQuantity<T>
    {
        writer.WritePropertyName(name);
        writer.WriteRawValue(Line(figure));
    }

    internal static string Line<T>(Figure<T> figure)
        where T : struct, IQuantity<T> => Line(figure.Written, figure.Basis, figure.Source, figure.On);

    internal static string Line(Amount written, Provenance basis, string? source, DateOnly? on) =>
        $"{{ {Inner(written)}, \"basis\": {Quoted(Wire.Name(basis))}"
        + (source is null ? "" : $", \"source\": {Quoted(source)}")
        + (on is { } day ? $", \"on\": {Quoted(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))}" : "")
        + " }";

    internal static string Line(Amount amount) => $"{{ {Inner(amount)} }}";

    private static string Inner(Amount amount) =>
        $"\"value\": {amount.Value.ToString("R", CultureInfo.InvariantCulture)}, \"unit\": {Quoted(amount.Unit.Ucum)}";

    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";

    private static Unit? ReadUnit(JsonElement element, string path, Dimension dimension, Problems problems)
    {
        var allowed = string.Join(", ", Units.Of(dimension).Select(u => u.Ucum).Where(u => u.Length > 0));
        if (!element.TryGetProperty("unit", out var unit))
        {
            problems.Add($"{path}.unit", "unit-missing", ("units", allowed));
            return null;
        }

        var code = unit.ValueKind == JsonValueKind.String ? unit.GetString()! : unit.GetRawText();
        if (Difference(code, dimension) is { } difference)
        {
            return difference;
        }

        if (Units.Find(code) is not { } found)
        {
            problems.Add($"{path}.unit", "unit-unknown", ("unit", code), ("units", allowed));
            return null;
        }

        if (found.Dimension != dimension)
        {
            problems.Add($"{path}.unit", "unit-other", ("unit", code), ("units", allowed));
            return null;
        }

        return found;
    }

    // A band of 4 degF is written [degF] by people; the place says that it is a difference.
    private static Unit? Difference(string code, Dimension dimension) =>
        dimension != Dimension.TemperatureDifference
            ? null
            : code switch
            {
                "[degF]" => Units.FahrenheitDifference,
                "K" or "Cel" => Units.CelsiusDifference,
                _ => null,
            };

    private static Provenance? Basis(JsonElement element, string path, Problems problems)
    {
        if (!element.TryGetProperty("basis", out var basis))
        {
            problems.Add($"{path}.basis", "basis-missing");
            return null;
        }

        foreach (var known in Enum.GetValues<Provenance>())
        {
            if (basis.ValueKind == JsonValueKind.String && basis.ValueEquals(Wire.Name(known)))
            {
                return known;
            }
        }

        problems.Add(
            $"{path}.basis",
            "not-among",
            ("value", basis.ToString()),
            ("values", string.Join(", ", Enum.GetValues<Provenance>().Select(Wire.Name)))
        );
        return null;
    }

    private static string? Text(JsonElement element, string name, string path, Problems problems)
    {
        if (!element.TryGetProperty(name, out var text))
        {
            return null;
        }

        if (text.ValueKind == JsonValueKind.String)
        {
            return text.GetString();
        }

        problems.Add($"{path}.{name}", "not-a-text");
        return null;
    }

    private static DateOnly? Day(JsonElement element, string path, Problems problems)
    {
        if (!element.TryGetProperty("on", out var on))
        {
            return null;
        }

        if (
            on.ValueKind == JsonValueKind.String
            && DateOnly.TryParseExact(on.GetString(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
        )
        {
            return day;
        }

        problems.Add($"{path}.on", "not-a-day", ("value", on.ToString()));
        return null;
    }
}
