using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>Row R70: water, heat and every solute are conserved in every run, whatever is broken. The two base machines with all their faults are in the sensitivity runs; here are the rest.</summary>
public sealed class LedgerVerification
{
    private const double Closes = 1e-9;

    private static readonly Scenario Short = new(
        "short",
        [new Stage(3600, ColdStart: true), new Stage(300, Read: true), new Stage(600, 1000, Read: true), new Stage(300, Off: true)]
    );

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public static TheoryData<MachineKind, string> Faults
    {
        get
        {
            var data = new TheoryData<MachineKind, string>();
            MachineKind[] kinds = [MachineKind.Undercounter, MachineKind.DoorChemical, MachineKind.RackConveyorOneTank, MachineKind.Flight];
            foreach (var kind in kinds)
            {
                foreach (var fault in MachineFaults.Of(TypicalMachines.Of(kind)))
                {
                    data.Add(kind, fault.Id);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void Ledgers_close_with_every_fault(MachineKind kind, string fault)
    {
        var run = MachineRun.Run(TypicalMachines.Of(kind), Short, [MachineFaults.Find(fault)!.At(1)], new RunOptions(1, 0), null, Token);

        Assert.InRange(run.LedgerGap, 0, Closes);
    }

    [Theory]
    [MemberData(nameof(Typicals.Kinds), MemberType = typeof(Typicals))]
    public void Ledgers_close_with_everything_broken_at_once(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var run = MachineRun.Run(machine, Short, [.. MachineFaults.Of(machine).Select(f => f.At(0.3))], new RunOptions(1, 0), null, Token);

        Assert.InRange(run.LedgerGap, 0, Closes);
    }

    [Theory]
    [MemberData(nameof(Typicals.Kinds), MemberType = typeof(Typicals))]
    public void Ledgers_close_in_every_scenario(MachineKind kind) =>
        Assert.All(
            Scenario.Ids,
            id =>
                Assert.InRange(
                    MachineRun.Run(TypicalMachines.Of(kind), Scenario.Find(id, 60)!, null, new RunOptions(2, 0), null, Token).LedgerGap,
                    0,
                    Closes
                )
        );
}
