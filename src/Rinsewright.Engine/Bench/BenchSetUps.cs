using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Bench;

/// <summary>Sums kept with a machine, and back.</summary>
public static class BenchSetUps
{
    /// <summary>The machine with this sum kept as its last set-up. Figures that are not asked for with what is chosen, and results that cannot be told, are not kept.</summary>
    public static Machine Keep(Machine machine, BenchTool tool, BenchInput input, BenchAnswer answer, DateOnly on, string by) =>
        machine with
        {
            SetUps =
            [
                .. machine.SetUps,
                new SetUp(
                    tool.Id,
                    on,
                    by,
                    [
                        .. tool
                            .Choices.Where(c => tool.Asks(c, input))
                            .Select(c => KeyValuePair.Create(c.Id, input.FindChoice(c.Id) ?? c.Usual)),
                    ],
                    [
                        .. tool
                            .Fields.Where(f => tool.Asks(f, input) && input.Find(f.Id) is not null)
                            .Select(f => KeyValuePair.Create(f.Id, input.Find(f.Id)!.Value)),
                    ],
                    [.. answer.Results.Where(r => r.Value is not null).Select(r => KeyValuePair.Create(r.Id, r.Value!.Value))]
                ),
            ],
        };

    /// <summary>
    /// What a set-up was worked with, for its tool; fields and options that this version does not know are left out. A plain number kept before its field had a unit is in that unit.
    /// </summary>
    public static BenchInput Input(BenchTool tool, SetUp setUp)
    {
        var input = BenchInput.Empty;
        foreach (var (id, amount) in setUp.Given)
        {
            if (tool.Fields.FirstOrDefault(f => f.Id == id) is { } field)
            {
                input =
                    field.Unit.Dimension == amount.Unit.Dimension ? input.And(id, amount)
                    : amount.Unit == Units.One ? input.And(id, amount with { Unit = field.Unit })
                    : input;
            }
        }

        foreach (var (id, option) in setUp.Choices)
        {
            if (tool.Choices.FirstOrDefault(c => c.Id == id) is { } choice && choice.Options.Contains(option, StringComparer.Ordinal))
            {
                input = input.And(id, option);
            }
        }

        return input;
    }
}
