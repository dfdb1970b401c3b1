namespace Rinsewright.Engine.Records;

/// <summary>
/// Something the engine says, as a key and its values. The words stand in the language files; screens, sheets and the command line only
/// render. A value is an <see cref="Quantities.Amount"/>, a <see cref="double"/>, a <see cref="long"/>, a <see cref="string"/> (data, such as a
/// file name), a <see cref="DateOnly"/>, a <see cref="DateTime"/>, a <see cref="TimeSpan"/>, a <see cref="Citation"/>, an enum member (worded by its own key) or another statement.
/// </summary>
/// <param name="Key">Dotted lower-case key, for example <c>proof.peak-below</c>.</param>
/// <param name="Values">Named values, in the order the sentence needs them.</param>
public sealed record Statement(string Key, IReadOnlyList<StatementValue> Values)
{
    /// <summary>A statement with its values in pairs of name and value.</summary>
    public static Statement Of(string key, params (string Name, object Value)[] values) =>
        new(key, [.. values.Select(v => new StatementValue(v.Name, v.Value))]);
}

/// <summary>One named value of a <see cref="Statement"/>.</summary>
public sealed record StatementValue(string Name, object Value);

/// <summary>Where a number comes from.</summary>
/// <param name="Source">Key in docs/references.bib.</param>
/// <param name="Locator">Section, clause, table or equation, for example <c>4-703.11(B)</c>.</param>
/// <param name="Title">Short title people know it by, for example <c>FDA Food Code</c>.</param>
/// <param name="Jurisdiction">Where it is in force; null where it is a standard or a practice.</param>
/// <param name="Edition">Edition or year, as far as known.</param>
/// <param name="Basis">How well the number is known.</param>
public sealed record Citation(
    string Source,
    string Locator,
    string Title,
    string? Jurisdiction = null,
    string? Edition = null,
    Basis Basis = Basis.Opened
);

/// <summary>How well a figure is known.</summary>
public enum Basis
{
    /// <summary>A text that carries the figure was opened.</summary>
    Opened,

    /// <summary>Read in a text that quotes the source.</summary>
    SecondHand,

    /// <summary>From memory; the source was not opened.</summary>
    FromMemory,

    /// <summary>Common practice in the trade, no source.</summary>
    CommonPractice,

    /// <summary>Read from this machine's data plate.</summary>
    DataPlate,

    /// <summary>Set by the service itself.</summary>
    Service,
}
