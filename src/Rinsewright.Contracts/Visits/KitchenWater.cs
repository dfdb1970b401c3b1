using System.Globalization;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Contracts.Visits;

/// <summary>Readings of a kitchen's water as they were typed there. What is no amount, or has no day, is left out.</summary>
public static class KitchenWater
{
    private static readonly (string Part, string Kind, Dimension Dimension, Unit? Assumed)[] Parts =
    [
        ("hardness", "rd-hardness", Dimension.Hardness, null),
        ("solids", "rd-tds", Dimension.MassConcentration, null),
        ("acidity", "water-ph", Dimension.Acidity, Units.PH),
        ("temperature", "rd-incoming-temp", Dimension.Temperature, null),
    ];

    /// <summary>The readings of a kitchen's document.</summary>
    public static IReadOnlyList<HistoryWater> Of(FieldDocument kitchen)
    {
        List<HistoryWater> all = [];
        foreach (var item in kitchen.Items(KitchenPaths.Water))
        {
            string At(string part) => kitchen[$"{KitchenPaths.Water}.{item}.{part}"];
            if (!DateOnly.TryParseExact(At("on"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var on))
            {
                continue;
            }

            foreach (var (part, kind, dimension, assumed) in Parts)
            {
                if (AmountText.TryParse(At(part), dimension, out var amount, out _, assumed: assumed))
                {
                    all.Add(new HistoryWater(kind, amount, on));
                }
            }
        }

        return all;
    }
}
