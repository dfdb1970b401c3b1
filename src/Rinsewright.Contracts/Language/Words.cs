using System.Globalization;
using System.Reflection;
using System.Text.Json;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Language;

/// <summary>The words of one language, from the embedded files <c>Language/&lt;language&gt;/*.json</c> (flat key → template with <c>{names}</c>).</summary>
public sealed partial class Words
{
    private static readonly Lazy<Words> English = new(() => Load("en"));
    private static readonly Lazy<Words> Spanish = new(() => Load("es"));
    private readonly Dictionary<string, string> texts;
    private bool late;

    private Words(string language, Dictionary<string, string> texts)
    {
        Language = language;
        this.texts = texts;
    }

    /// <summary>Languages there are words for.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "es"];

    /// <summary>Two-letter code.</summary>
    public string Language { get; }

    /// <summary>Every key, for tests.</summary>
    public IEnumerable<string> Keys => texts.Keys;

    /// <summary>The text of a key; the key itself in brackets where it is missing, which a test never lets happen.</summary>
    public string this[string key] => texts.TryGetValue(key, out var text) ? text : $"[{key}]";

    /// <summary>Words of a language; English where it is not one of <see cref="Languages"/>.</summary>
    public static Words For(string? language) =>
        string.Equals(language, "es", StringComparison.OrdinalIgnoreCase) ? Spanish.Value : English.Value;

    /// <summary>A template with its names replaced.</summary>
    public string Say(string key, params (string Name, string Value)[] values)
    {
        var text = this[key];
        foreach (var (name, value) in values)
        {
            text = text.Replace("{" + name + "}", value, StringComparison.Ordinal);
        }

        return text;
    }

    /// <summary>A statement in words.</summary>
    public string Say(StatementDto statement) => Say(statement.Key, [.. statement.Values.Select(v => (v.Name, Show(v)))]);

    /// <summary>An amount with a no-break space before its symbol, decimals as the unit is sensibly shown.</summary>
    public string Show(AmountDto amount)
    {
        var unit = Units.Find(amount.Unit);
        return unit == Units.PH ? $"{unit.Symbol}\u00a0{Number(amount.Value, unit.Digits)}"
            : unit is null ? $"{Number(amount.Value, 6)}\u00a0{amount.Unit}"
            : $"{Number(amount.Value, DigitsOf(amount.Value, unit))}\u00a0{unit.Symbol}".TrimEnd('\u00a0');
    }

    // A limit of 1 mL typed in litres must not read 0 L.
    private static int DigitsOf(double value, Unit unit) =>
        Math.Abs(value) is >= 1e-4 and < 0.5 and var small && small < 0.5 * Math.Pow(10, -unit.Digits)
            ? (int)Math.Ceiling(-Math.Log10(small))
            : unit.Digits;

    /// <summary>A number with thousands separated and at most <paramref name="digits"/> decimals: 5,856 in English, 5 856 (thin space) in Spanish decimal comma.</summary>
    public string Number(double value, int digits) => Localized(value, "#,0." + new string('#', digits));

    /// <summary>A number as <see cref="Number"/> writes it, with exactly <paramref name="digits"/> decimals, for columns.</summary>
    public string Fixed(double value, int digits) =>
        Localized(Math.Round(value, digits, MidpointRounding.AwayFromZero) + 0.0, "#,0." + new string('0', digits));

    /// <summary>A formula with its decimal points as this language writes them.</summary>
    public string Formula(string formula) =>
        Language == "es"
            ? string.Concat(
                formula.Select(
                    (c, i) =>
                        c == '.' && i > 0 && i + 1 < formula.Length && char.IsDigit(formula[i - 1]) && char.IsDigit(formula[i + 1])
                            ? ','
                            : c
                )
            )
            : formula;

    private string Localized(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return Language == "es" ? text.Replace(',', '\u202f').Replace('.', ',') : text;
    }

    private string Show(StatementValueDto v) =>
        v.Amount is { } a ? Show(a)
        : v.Number is { } n ? Number(n, 3)
        : v.Time is { } t ? Second(t)
        : v.Date is { } d ? Day(d)
        : v.Word is { } w ? this[w]
        : v.Citation is { } c ? Show(c)
        : v.Statement is { } s ? Say(s)
        : v.Text ?? "";

    /// <summary>A citation in one line, with how well it is known where that is not from an opened text.</summary>
    public string Show(CitationDto c)
    {
        var place =
            c.Basis == "commonPractice"
                ? this["basis.common-practice"]
                : $"{Cited(c.Title)}{(c.Locator.Length > 0 ? " " + Cited(c.Locator) : "")}";
        return c.Basis is "secondHand" or "fromMemory"
            ? $"{place} ({this["basis." + (c.Basis == "secondHand" ? "second-hand" : "from-memory")]})"
            : place;
    }

    /// <summary>A title, edition or locator of a built-in source in this language; as it was written where there is no other word for it.</summary>
    public string Cited(string text) => texts.GetValueOrDefault("cited." + Slug(text), text);

    /// <summary>Small letters and digits, everything else as hyphens.</summary>
    internal static string Slug(string text) =>
        string.Join(
            '-',
            string.Concat(text.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' '))
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
        );

    /// <summary>Takes in the words that come late, once their library is at hand: in the browser after it was fetched; elsewhere it lies beside this one from the start.</summary>
    public static void LateAreHere()
    {
        foreach (var words in (Lazy<Words>[])[English, Spanish])
        {
            if (words is { IsValueCreated: true, Value.late: false })
            {
                words.Value.TakeLate();
            }
        }
    }

    private static Words Load(string language)
    {
        var words = new Words(language, new Dictionary<string, string>(StringComparer.Ordinal));
        words.Take(typeof(Words).Assembly);
        words.TakeLate();
        return words;
    }

    private void TakeLate()
    {
        try
        {
            Take(Assembly.Load("Rinsewright.LateWords"));
            late = true;
        }
        catch (FileNotFoundException)
        {
            // Not fetched yet.
        }
    }

    private void Take(Assembly assembly)
    {
        foreach (
            var name in assembly
                .GetManifestResourceNames()
                .Where(n => n.Replace('\\', '/').StartsWith($"Language/{Language}/", StringComparison.Ordinal))
        )
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var json = JsonDocument.Parse(stream);
            foreach (var property in json.RootElement.EnumerateObject())
            {
                texts[property.Name] = property.Value.GetString()!;
            }
        }
    }
}
