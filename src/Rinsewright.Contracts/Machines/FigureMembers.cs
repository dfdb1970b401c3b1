using System.Text.Json;
using System.Text.Json.Nodes;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Machines;

/// <summary>A figure that every such part has.</summary>
internal sealed class FigureMember<T, TQuantity>(
    string name,
    Bounds bounds,
    Func<T, Figure<TQuantity>> get,
    Func<T, Figure<TQuantity>, T> set
) : Member<T>(name)
    where T : class
    where TQuantity : struct, IQuantity<TQuantity>
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind == JsonValueKind.Null)
        {
            problems.Add(path, "needed");
            return current;
        }

        return FigureJson.Read<TQuantity>(element, path, bounds, problems) is { } figure ? set(current, figure) : current;
    }

    internal override bool Differs(T left, T right) => get(left) != get(right);

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole) => FigureJson.Write(writer, Name, get(value));

    internal override JsonObject Schema(SchemaWriter schemas) => schemas.Figure(TQuantity.Dimension, bounds, optional: false);

    internal override IEnumerable<FigureView> Figures(T value, string path, string word) => [FigureJson.View(path, word, get(value))];
}

/// <summary>A figure that such a part may lack; <c>null</c> in the file takes it away.</summary>
internal sealed class OptionalFigureMember<T, TQuantity>(
    string name,
    Bounds bounds,
    Func<T, Figure<TQuantity>?> get,
    Func<T, Figure<TQuantity>?, T> set
) : Member<T>(name)
    where T : class
    where TQuantity : struct, IQuantity<TQuantity>
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind == JsonValueKind.Null)
        {
            return set(current, null);
        }

        return FigureJson.Read<TQuantity>(element, path, bounds, problems) is { } figure ? set(current, figure) : current;
    }

    internal override bool Differs(T left, T right) => get(left) != get(right);

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        if (get(value) is { } figure)
        {
            FigureJson.Write(writer, Name, figure);
        }
        else if (typical is not null && get(typical) is not null)
        {
            writer.WriteNull(Name);
        }
    }

    internal override JsonObject Schema(SchemaWriter schemas) => schemas.Figure(TQuantity.Dimension, bounds, optional: true);

    internal override IEnumerable<FigureView> Figures(T value, string path, string word) =>
        [
            get(value) is { } figure
                ? FigureJson.View(path, word, figure)
                : new FigureView(path, word, TQuantity.Dimension, null, Provenance.Typical),
        ];
}

/// <summary>Places along the machine, as a list of figures; the file's list replaces the whole.</summary>
internal sealed class PlacesMember<T>(
    string name,
    Bounds bounds,
    Func<T, IReadOnlyList<Figure<Length>>> get,
    Func<T, IReadOnlyList<Figure<Length>>, T> set
) : Member<T>(name)
    where T : class
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind != JsonValueKind.Array)
        {
            problems.Add(path, "not-a-list");
            return current;
        }

        var places = element
            .EnumerateArray()
            .Select((e, i) => FigureJson.Read<Length>(e, $"{path}[{i}]", bounds, problems))
            .OfType<Figure<Length>>()
            .ToList();
        return set(current, places);
    }

    internal override bool Differs(T left, T right) => !get(left).SequenceEqual(get(right));

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        writer.WriteStartArray(Name);
        foreach (var place in get(value))
        {
            writer.WriteRawValue(FigureJson.Line(place));
        }

        writer.WriteEndArray();
    }

    internal override JsonObject Schema(SchemaWriter schemas) =>
        new() { ["type"] = "array", ["items"] = schemas.Figure(Dimension.Length, bounds, optional: false) };

    internal override IEnumerable<FigureView> Figures(T value, string path, string word) =>
        get(value).Select((f, i) => FigureJson.View($"{path}[{i}]", word, f));
}

/// <summary>A limit on the data plate, absent where not read: value and unit, no provenance, because the plate is where it comes from.</summary>
internal sealed class PlateMember<T>(string name, Dimension dimension, Bounds bounds, Func<T, Amount?> get, Func<T, Amount?, T> set)
    : Member<T>(name)
    where T : class
{
    internal override T Read(JsonElement element, string path, T current, Problems problems)
    {
        if (element.ValueKind == JsonValueKind.Null)
        {
            return set(current, null);
        }

        var amount = FigureJson.ReadAmount(element, path, dimension, FigureJson.AmountFields, problems);
        return amount is { } written && bounds.Check(written, path, problems) ? set(current, amount) : current;
    }

    internal override bool Differs(T left, T right) => get(left) != get(right);

    internal override void Write(Utf8JsonWriter writer, T value, T? typical, bool whole)
    {
        if (get(value) is { } amount)
        {
            writer.WritePropertyName(Name);
            writer.WriteRawValue(FigureJson.Line(amount));
        }
        else if (typical is not null && get(typical) is not null)
        {
            writer.WriteNull(Name);
        }
    }

    internal override JsonObject Schema(SchemaWriter schemas) => schemas.PlateAmount(dimension);
}
