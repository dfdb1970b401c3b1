using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Cli.Sanitization;

/// <summary>A limit in one entry: place, at least or at most, every unit it is printed in, what stands behind it, where it is printed.</summary>
internal static class LimitText
{
    private const int Column = 30;

    public static void Write(TextPage page, Words words, LimitDto limit, string appliesTo = "")
    {
        var printed = words.Show(limit.Printed[0]) + string.Concat(limit.Printed.Skip(1).Select(p => $" ({words.Show(p)})"));
        // A citation of common practice says so itself.
        var force = limit.Citation.Basis == "commonPractice" ? "" : words[ProofText.Key("limit-force", limit.Force)] + ", ";
        page.Entry(
            $"  {words[ProofText.Key("measuring-point", limit.Point)]}",
            $"{words[ProofText.Key("limit-sense", limit.Sense)]} {printed}; {force}{words.Show(limit.Citation)}{appliesTo}",
            Column
        );
    }
}
