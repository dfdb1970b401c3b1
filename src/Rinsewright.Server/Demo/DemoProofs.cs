using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Demo;

namespace Rinsewright.Server.Demo;

/// <summary>One proof of the invented service: what was asked, never what came out.</summary>
/// <param name="Id">Document; fixed, so that seeding twice changes nothing.</param>
/// <param name="OperationId">Operation that brings it; fixed likewise.</param>
/// <param name="Kitchen">Kitchen.</param>
/// <param name="Machine">Machine.</param>
/// <param name="Technician">Who.</param>
/// <param name="At">When.</param>
/// <param name="Note">What was done.</param>
/// <param name="File">Name of the logger file; null where there were readings alone.</param>
/// <param name="Request">What was asked.</param>
public sealed record DemoProof(
    Guid Id,
    Guid OperationId,
    string Kitchen,
    string Machine,
    string Technician,
    DateTimeOffset At,
    string Note,
    string? File,
    ProofRequest Request
)
{
    /// <summary>Bytes of <see cref="File"/>.</summary>
    public byte[] Content() => DemoLoggers.Bytes(File!);
}

/// <summary>Tamarack Valley Warewashing: people, kitchens, readings, files and dates (those of the files) are invented.</summary>
public static class DemoProofs
{
    private static readonly TimeSpan MountainTime = TimeSpan.FromHours(-6);
    private static readonly InstrumentDto PlateLogger = new(
        "Plate logger 7",
        new AmountDto(0.9, "[degF]{diff}"),
        CalibratedOn: new DateOnly(2026, 2, 3),
        CalibrationDue: new DateOnly(2032, 2, 3)
    );
    private static readonly InstrumentDto Probe = new(
        "Probe no. 4",
        new AmountDto(1, "[degF]{diff}"),
        CalibratedOn: new DateOnly(2026, 3, 10)
    );
    private static readonly InstrumentDto Strips = new("Chlorine strips, 0 to 200 mg/L");
    private static readonly InstrumentDto Gauge = new(
        "Gauge at the rinse valve",
        new AmountDto(1, "[psi]"),
        Division: new AmountDto(1, "[psi]")
    );

    /// <summary>Every proof of the demo.</summary>
    public static IReadOnlyList<DemoProof> All { get; } =
    [Larkspur(At(14, 13, 50)), Saltbox(At(14, 16, 35)), Millrace(At(15, 10, 5)), TinBell(At(13, 15, 20))];

    private static DemoProof Larkspur(DateTimeOffset at) =>
        new(
            new Guid("01993a00-0001-7000-8000-7a6d617261c1"),
            new Guid("01993a00-0001-7000-9000-7a6d617261c1"),
            "Larkspur Lodge",
            "Two-tank rack conveyor, banquets",
            "Ines Calloway",
            at,
            "Five plates through the machine in the banquet rush, logger in the middle of the rack.",
            DemoLoggers.LarkspurTwoTank,
            new ProofRequest(
                Instrument: PlateLogger,
                Readings:
                [
                    Read("washTank", 155, "[degF]", "probe", Probe, at.AddMinutes(-24)),
                    Read("pumpedRinseTank", 166, "[degF]", "probe", Probe, at.AddMinutes(-22)),
                    Read("finalRinseManifold", 184, "[degF]", "probe", Probe, at.AddMinutes(-20)),
                    Read("finalRinseLine", 19, "[psi]", "machineGauge", Gauge, at.AddMinutes(-20)),
                ]
            )
        );

    private static DemoProof Saltbox(DateTimeOffset at) =>
        new(
            new Guid("01993a00-0002-7000-8000-7a6d617261c1"),
            new Guid("01993a00-0002-7000-9000-7a6d617261c1"),
            "Saltbox Oyster Bar",
            "Undercounter machine for glasses",
            "Bram Oakes",
            at,
            "Four cycles at the end of service. Booster thermostat checked before.",
            DemoLoggers.SaltboxUndercounter,
            new ProofRequest(
                Machine: "stationaryRackDualTemperature",
                Instrument: new InstrumentDto("Plate logger 3", new AmountDto(0.5, "K{diff}"))
            )
        );

    private static DemoProof Millrace(DateTimeOffset at) =>
        new(
            new Guid("01993a00-0003-7000-8000-7a6d617261c1"),
            new Guid("01993a00-0003-7000-9000-7a6d617261c1"),
            "Millrace Brewery",
            "Door machine, hot water",
            "Bram Oakes",
            at,
            "Final rinse cold: scale in the booster. Kitchen washes by hand until the booster is delimed.",
            DemoLoggers.MillraceDoor,
            new ProofRequest(
                Machine: "stationaryRackDualTemperature",
                Instrument: new InstrumentDto("Plate logger 3", new AmountDto(0.5, "K{diff}"))
            )
        );

    private static DemoProof TinBell(DateTimeOffset at) =>
        new(
            new Guid("01993a00-0004-7000-8000-7a6d617261c1"),
            new Guid("01993a00-0004-7000-9000-7a6d617261c1"),
            "Tin Bell Diner",
            "Door machine, chlorine",
            "Ines Calloway",
            at,
            "Sanitizer pump primed, then three racks, reading from the last.",
            null,
            new ProofRequest(
                Machine: "stationaryRackSingleTemperature",
                Method: "chlorine",
                Readings:
                [
                    Read("washTank", 128, "[degF]", "probe", Probe, at.AddMinutes(-9)),
                    Read("sanitizingSolution", 75, "mg/L", "strip", Strips, at.AddMinutes(-6)) with
                    {
                        Lot = "K-118",
                        Expires = new DateOnly(2032, 8, 31),
                    },
                    Read("sanitizingSolution", 124, "[degF]", "probe", Probe, at.AddMinutes(-6)),
                    Read("sanitizingSolution", 7.6, "[pH]", "strip", new InstrumentDto("pH strips"), at.AddMinutes(-5)),
                    Read("sanitizingSolution", 12, "s", "stopwatch", new InstrumentDto("Stopwatch"), at.AddMinutes(-5)),
                    Read("finalRinseLine", 18, "[psi]", "machineGauge", Gauge, at.AddMinutes(-7)),
                ]
            )
        );

    private static DateTimeOffset At(int day, int hour, int minute) => new(2026, 5, day, hour, minute, 0, MountainTime);

    private static ReadingDto Read(string point, double value, string unit, string method, InstrumentDto instrument, DateTimeOffset at) =>
        new(point, new AmountDto(value, unit), method, instrument, at);
}
