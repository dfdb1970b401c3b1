using Rinsewright.Engine.Chemistry;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Bench;

/// <summary>Washing by hand in three sinks while the machine is down, for these sinks and by this rule set.</summary>
/// <param name="Rules">Rule set in force.</param>
/// <param name="Method">How it sanitizes.</param>
/// <param name="WashSink">Water in the first sink.</param>
/// <param name="RinseSink">Water in the second.</param>
/// <param name="SanitizingSink">Water in the third.</param>
/// <param name="DetergentShare">Detergent by volume, as its label says.</param>
/// <param name="Wash">What the set asks of the wash; null where it says nothing.</param>
/// <param name="Required">What it asks of sanitizing.</param>
/// <param name="Aim">Strength it is mixed for; null for hot water.</param>
/// <param name="Stock">Active part of the product; null for hot water.</param>
public sealed record ByHandPlan(
    RuleSet Rules,
    SanitizingMethod Method,
    Volume WashSink,
    Volume RinseSink,
    Volume SanitizingSink,
    Ratio DetergentShare,
    HandRule? Wash,
    HandRequirement Required,
    MassConcentration? Aim,
    MassConcentration? Stock
)
{
    /// <summary>Detergent for the first sink.</summary>
    public Volume Detergent => DetergentShare.InFraction * WashSink;

    /// <summary>Sanitizer for the third sink; null for hot water.</summary>
    public Volume? Sanitizer => Aim is { } aim && Stock is { } stock ? Feeding.Dose(aim, SanitizingSink, stock) : null;

    /// <summary>The plan for what was typed into the tool <c>by-hand</c>; null where something is missing or the rule set has no such plan.</summary>
    public static ByHandPlan? Of(BenchInput input)
    {
        var tool = ByHandTool.Plan;
        return tool.Solve(input).Answer is null ? null : ByHandTool.PlanOf(input.With(tool));
    }

    /// <summary>
    /// Strength to mix for: a quarter over the least, for what the first ware uses up, and no nearer to the most than to the least (ours, an estimate; the strip rules).
    /// </summary>
    internal static MassConcentration AimAt(Amount least, Amount? most)
    {
        var over = 1.25 * least.SI;
        return MassConcentration.From(
            new Amount(most is { } m ? Math.Min(over, (least.SI + m.SI) / 2) : over, Units.GramPerLitre).In(Units.MilligramPerLitre)
        );
    }
}
