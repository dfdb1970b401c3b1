using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Files.Demo;

namespace Rinsewright.Client.Sanitization;

/// <summary>An invented proof to try the screen with.</summary>
/// <param name="File">Name of the demo file.</param>
/// <param name="Key">Word key of its button.</param>
/// <param name="Kitchen">Kitchen.</param>
/// <param name="MachineKey">Word key of the machine's name.</param>
/// <param name="Request">What is set.</param>
public sealed record Demo(string File, string Key, string Kitchen, string MachineKey, ProofRequest Request)
{
    /// <summary>All of them, the one to begin with first.</summary>
    public static readonly IReadOnlyList<Demo> All =
    [
        new(
            DemoLoggers.LarkspurTwoTank,
            "client.demo.larkspur",
            "Larkspur Lodge",
            "client.demo.two-tank",
            new ProofRequest(
                Instrument: new InstrumentDto("Logger no. 7", new AmountDto(0.9, Units.FahrenheitDifference.Ucum), new DateOnly(2026, 3, 2))
            )
        ),
        new(
            DemoLoggers.MillraceDoor,
            "client.demo.millrace",
            "Millrace Brewery",
            "client.demo.door",
            new ProofRequest(
                Machine: "stationaryRackDualTemperature",
                Instrument: new InstrumentDto("Logger no. 7", new AmountDto(0.5, Units.CelsiusDifference.Ucum), new DateOnly(2026, 3, 2))
            )
        ),
        new(
            DemoLoggers.SaltboxUndercounter,
            "client.demo.saltbox",
            "Saltbox Oyster Bar",
            "client.demo.undercounter",
            new ProofRequest(Machine: "stationaryRackDualTemperature")
        ),
    ];
}
