using System.CommandLine;
using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary>What a day holds and what things cost.</summary>
internal sealed class PriceOptions
{
    private static readonly string[] Kinds = ["electricity", "fuel", "water", "hot-water", "detergent", "rinse-additive", "sanitizer"];

    private readonly Option<string[]> price = Options.Many("--price", "WHAT=N");
    private readonly Option<string?> racks = Options.One("--racks-per-day", "N");
    private readonly Option<string?> standBy = Options.One("--stand-by", "HOURS");

    /// <summary>All of them, in the order of the help.</summary>
    public Option[] All => [price, racks, standBy];

    /// <summary>Terms of the comparison; a day only where somebody said how many racks it has or what something costs.</summary>
    public WhatIfTerms Read(ParseResult parsed, double rate, Words words)
    {
        var prices = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var typed in parsed.GetValue(price) ?? [])
        {
            var parts = typed.Split('=', 2);
            if (!Kinds.Contains(parts[0], StringComparer.Ordinal))
            {
                throw new UsageException(CommandLine.NotAmong(words, price.Name, parts[0], Kinds));
            }

            prices[parts[0]] = Number(parts.Length > 1 ? parts[1] : "", price.Name, words);
        }

        var perDay = parsed.GetValue(racks) is { } text ? Number(text, racks.Name, words) : (double?)null;
        if (perDay is null && prices.Count == 0)
        {
            return new WhatIfTerms();
        }

        double? Of(string kind) => prices.TryGetValue(kind, out var n) ? n : null;
        return new WhatIfTerms(
            // Without a word a day is two hours at the rate asked for: a lunch and a dinner.
            Day: new DayOfUse(perDay ?? (2 * rate), parsed.GetValue(standBy) is { } h ? Number(h, standBy.Name, words) : 4),
            Tariff: new Tariff(
                Of("electricity"),
                Of("fuel"),
                Of("water"),
                Of("hot-water"),
                Of("detergent"),
                Of("rinse-additive"),
                Of("sanitizer")
            )
        );
    }

    private static double Number(string text, string option, Words words) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number >= 0 && double.IsFinite(number)
            ? number
            : throw new UsageException(words.Say("cli.error.not-a-number", ("option", option), ("value", text)));
}
