using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Drawing.Section;
using Rinsewright.Engine.Machines;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Drawing.Tests.Section;

/// <summary>The sections as they were looked at and accepted.</summary>
public sealed class SectionGoldenTests
{
    public static TheoryData<string> Names => [.. Scenes.Keys];

    private static Dictionary<string, Func<Scene>> Scenes { get; } =
        new(StringComparer.Ordinal)
        {
            ["section-undercounter.svg"] = () => Draw(MachineKind.Undercounter, 0.5),
            ["section-door-hot.svg"] = () => Draw(MachineKind.DoorHotWater),
            ["section-door-chemical.svg"] = () => Draw(MachineKind.DoorChemical),
            ["section-one-tank.svg"] = () => Draw(MachineKind.RackConveyorOneTank),
            ["section-two-tank.svg"] = () => Draw(MachineKind.RackConveyorTwoTank),
            ["section-three-tank.svg"] = () => Draw(MachineKind.RackConveyorThreeTank, 0.36),
            ["section-flight.svg"] = () => Draw(MachineKind.Flight, 0.3),
            ["section-two-tank-faulty.svg"] = () =>
                SectionDrawing.Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank), SectionTests.Faulty()).Scene(),
            ["section-two-tank-phone-es.svg"] = () =>
                SectionDrawing
                    .Of(
                        TypicalMachines.Of(MachineKind.RackConveyorTwoTank),
                        SectionTests.Options("es") with
                        {
                            Scale = 0.325,
                            Flags = FlagText.Short,
                            Rows = 2,
                            Zone = "wash",
                            Units = UnitDisplay.Si,
                        }
                    )
                    .Scene(),
            ["section-two-tank-paper.svg"] = () =>
                SectionDrawing
                    .Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank), SectionTests.Options("en") with { Scale = 0.24, Print = true })
                    .Scene(),
            ["section-two-tank-mirrored.svg"] = () =>
                SectionDrawing
                    .Of(TypicalMachines.Of(MachineKind.RackConveyorTwoTank) with { RunsRightToLeft = true }, SectionTests.Options("en"))
                    .Scene(),
        };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_section_stays_as_accepted(string name) =>
        Golden.Matches($"tests/Rinsewright.Drawing.Tests/Golden/{name}", SvgWriter.Write(Scenes[name](), standalone: true));

    private static Scene Draw(MachineKind kind, double scale = 0.43) =>
        SectionDrawing.Of(TypicalMachines.Of(kind), new SectionOptions { Words = Words.For("en"), Scale = scale }).Scene();
}
