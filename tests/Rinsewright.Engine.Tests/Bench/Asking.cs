using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>Asks a tool of the Bench, its usual figures but for what is typed, and looks at one result.</summary>
internal static class Asking
{
    public static BenchInput With(string tool, params (string Id, double Value, Unit Unit)[] typed) =>
        typed.Aggregate(BenchInput.UsualOf(BenchTools.Find(tool)!), (input, t) => input.And(t.Id, new Amount(t.Value, t.Unit)));

    public static BenchAnswer Ask(string tool, params (string Id, double Value, Unit Unit)[] typed)
    {
        var outcome = BenchTools.Find(tool)!.Solve(With(tool, typed));
        Assert.Empty(outcome.Problems);
        return outcome.Answer!;
    }

    public static BenchResult Of(BenchAnswer answer, string id) => Assert.Single(answer.Results, r => r.Id == id);

    public static void Equal(BenchAnswer answer, string id, double expected, double within) =>
        Assert.Equal(expected, Of(answer, id).Value!.Value.Value, within);
}
