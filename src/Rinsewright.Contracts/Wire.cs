using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Contracts;

/// <summary>Something that arrived cannot be used: says which field and what is allowed.</summary>
public sealed class ContractException(string field, string problem) : Exception($"{field}: {problem}")
{
    /// <summary>A value that its field cannot have, with the reason in words to come.</summary>
    public ContractException(string field, Statement says)
        : this(field, Words.For("en").Say(Wire.From(says))) => Says = says;

    /// <summary>The reason, for a person who reads another language; null where only a program can have caused it.</summary>
    public Statement? Says { get; }

    /// <summary>Field, for example <c>readings[0].unit</c>.</summary>
    public string Field { get; } = field;

    /// <summary>What is wrong and what is allowed.</summary>
    public string Problem { get; } = problem;
}

/// <summary>Engine values to their travelling form and back.</summary>
public static class Wire
{
    /// <summary>Camel-case name of an enum member.</summary>
    public static string Name<T>(T value)
        where T : struct, Enum
    {
        var name = value.ToString();
        return char.ToLowerInvariant(name[0]) + name[1..];
    }

    /// <summary>Word key of an enum member, for example <c>measuring-point.wash-tank</c>.</summary>
    public static string WordKey(Enum value) => $"{Kebab(value.GetType().Name)}.{Kebab(value.ToString())}";

    /// <summary>The enum member of a camel-case name.</summary>
    /// <exception cref="ContractException">The name is not known; the message lists those that are.</exception>
    public static T Parse<T>(string name, string field)
        where T : struct, Enum =>
        !char.IsDigit(name.FirstOrDefault('0')) && Enum.TryParse<T>(name, true, out var value) && Enum.IsDefined(value)
            ? value
            : throw new ContractException(
                field,
                $"'{name}' is not known; use one of {string.Join(", ", Enum.GetValues<T>().Select(Name))}"
            );

    /// <summary>An amount to its travelling form.</summary>
    public static AmountDto From(Amount a) => new(a.Value, a.Unit.Ucum);

    /// <summary>An optional amount to its travelling form.</summary>
    public static AmountDto? From(Amount? a) => a is { } x ? From(x) : null;

    /// <summary>An amount from its travelling form.</summary>
    /// <exception cref="ContractException">The unit is not known or the value is not finite.</exception>
    public static Amount To(AmountDto a, string field) =>
        Units.Find(a.Unit) is { } unit && double.IsFinite(a.Value)
            ? new Amount(a.Value, unit)
            : throw new ContractException(
                field,
                $"'{a.Value} {a.Unit}' needs a finite number and a UCUM unit such as [degF], Cel, [psi], kPa, mg/L or s"
            );

    /// <summary>An amount read at, or printed for, a place.</summary>
    /// <exception cref="ContractException">The unit is not known, or the value cannot be there (<see cref="TypedRange"/>).</exception>
    public static Amount To(AmountDto a, MeasuringPoint point, string field)
    {
        var amount = To(a, field);
        return TypedRange.Refusal(point, amount) is { } refusal ? throw new ContractException(field, refusal) : amount;
    }

    /// <summary>An optional amount from its travelling form.</summary>
    public static Amount? ToOptional(AmountDto? a, string field) => a is null ? null : To(a, field);

    /// <summary>A citation to its travelling form.</summary>
    public static CitationDto From(Citation c) => new(c.Source, c.Locator, c.Title, c.Jurisdiction, c.Edition, Name(c.Basis));

    /// <summary>A statement to its travelling form.</summary>
    public static StatementDto From(Statement s) => new(s.Key, [.. s.Values.Select(From)]);

    /// <summary>A reading to its travelling form.</summary>
    public static ReadingDto From(Reading r) =>
        new(Name(r.Point), From(r.Value), Name(r.Method), r.Instrument is { } i ? From(i) : null, r.At, r.Reached, r.Lot, r.Expires);

    /// <summary>A reading from its travelling form.</summary>
    /// <exception cref="ContractException">A field is not known, or the value cannot be (<see cref="TypedRange"/>).</exception>
    public static Reading To(ReadingDto r, string field)
    {
        var point = Parse<MeasuringPoint>(r.Point, field + ".point");
        return new(
            point,
            To(r.Value, point, field + ".value"),
            Parse<ReadingMethod>(r.Method, field + ".method"),
            r.Instrument is { } i ? To(i, field + ".instrument") : null,
            r.At,
            r.Reached,
            r.Lot,
            r.Expires
        );
    }

    /// <summary>An instrument to its travelling form.</summary>
    public static InstrumentDto From(Instrument i) =>
        new(i.Name, From(i.Uncertainty), i.CalibratedOn, i.CalibrationDue, From(i.Division), i.Serial);

    /// <summary>An instrument from its travelling form.</summary>
    /// <exception cref="ContractException">A field is not known, or no instrument is that accurate or that coarse.</exception>
    public static Instrument To(InstrumentDto i, string field)
    {
        var uncertainty = ToOptional(i.Uncertainty, field + ".uncertainty");
        return uncertainty is { } u && TypedRange.AccuracyRefusal(u) is { } refusal
            ? throw new ContractException(field + ".uncertainty", refusal)
            : new Instrument(i.Name, uncertainty, i.CalibratedOn, i.CalibrationDue, ToOptional(i.Division, field + ".division"), i.Serial);
    }

    private static StatementValueDto From(StatementValue v) =>
        v.Value switch
        {
            Amount a => new StatementValueDto(v.Name, Amount: From(a)),
            double d => new StatementValueDto(v.Name, Number: d),
            long n => new StatementValueDto(v.Name, Number: n),
            int n => new StatementValueDto(v.Name, Number: n),
            DateTime t => new StatementValueDto(v.Name, Time: t),
            DateOnly t => new StatementValueDto(v.Name, Date: t),
            TimeSpan t => new StatementValueDto(v.Name, Amount: new AmountDto(t.TotalSeconds, Units.Second.Ucum)),
            Enum e => new StatementValueDto(v.Name, Word: WordKey(e)),
            Citation c => new StatementValueDto(v.Name, Citation: From(c)),
            Statement s => new StatementValueDto(v.Name, Statement: From(s)),
            _ => new StatementValueDto(v.Name, Text: Convert.ToString(v.Value, System.Globalization.CultureInfo.InvariantCulture)),
        };

    private static string Kebab(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
