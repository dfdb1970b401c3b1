using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Drawing.Bench;

/// <summary>A sum as it is shown: in one system of units, and with what nobody read told apart.</summary>
public static class BenchShown
{
    /// <summary>What was typed, in the units shown.</summary>
    public static BenchInput Turned(BenchTool tool, BenchInput input, UnitDisplay units)
    {
        foreach (var field in tool.Fields)
        {
            if (input.Find(field.Id) is { } amount)
            {
                input = input.And(field.Id, amount.In(Shown.UnitFor(amount.Unit, units)));
            }
        }

        return input;
    }

    /// <summary>Figures asked for that stand at what is usual.</summary>
    public static IEnumerable<BenchField> Usual(BenchTool tool, BenchInput input) =>
        tool.Fields.Where(f =>
            f.Usual is { } usual
            && tool.Asks(f, input)
            && input.Find(f.Id) is { } amount
            && Math.Abs(amount.In(f.Unit).Value - usual) <= 1e-6 * Math.Abs(usual)
        );
}
