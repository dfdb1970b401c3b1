using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>Invented visits, and the judging of them with bands that are worked out once.</summary>
internal static class InventedVisit
{
    public static readonly DateTimeOffset Morning = new(2026, 11, 24, 9, 0, 0, TimeSpan.FromHours(-7));

    private static readonly Dictionary<MachineKind, OwnBands> Bands = [];
    private static readonly Lock Gate = new();

    public static RuleSet Rules => RuleSets.Find(RuleSets.DefaultId)!;

    /// <summary>A two-tank conveyor, hot water, read through under load and touched by nobody.</summary>
    public static Visit Conveyor() =>
        new()
        {
            Machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank),
            Began = Morning,
            Technician = "R. Okafor",
            Instruments = Probes,
            TestSupplies = Strips,
            Photos = [new VisitPhoto(new string('a', 64), VisitMoment.AsFound, At: Morning)],
            Readings = [.. ConveyorReadings(VisitMoment.AsFound, 5)],
        };

    /// <summary>The same with the wash thermostat set, and everything read again afterwards.</summary>
    public static Visit ConveyorSet() =>
        Conveyor() with
        {
            Changes = [Thermostat],
            Readings = [.. ConveyorReadings(VisitMoment.AsFound, 5), .. ConveyorReadings(VisitMoment.AsLeft, 60)],
            Leaks = [new LeakLook(true, VisitMoment.AsLeft, At: Morning.AddMinutes(80))],
        };

    /// <summary>A chlorine door machine that was read through and touched by nobody.</summary>
    public static Visit Door(double chlorine = 75) =>
        new()
        {
            Machine = TypicalMachines.Of(MachineKind.DoorChemical) with
            {
                Plate = new DataPlate(WashMinimum: Fahrenheit(120), SanitizerMinimum: Milligram(50)),
            },
            Began = Morning,
            Technician = "R. Okafor",
            Instruments = Probes,
            TestSupplies = Strips,
            Photos = [new VisitPhoto(new string('a', 64), VisitMoment.AsFound, At: Morning)],
            Readings = [.. DoorReadings(VisitMoment.AsFound, 5, chlorine)],
        };

    public static VisitChange Thermostat { get; } =
        new(ChangeKind.Set, "Wash thermostat", [AcceptanceArea.Heat])
        {
            Before = Fahrenheit(158),
            After = Fahrenheit(160),
            At = Morning.AddMinutes(40),
        };

    public static VisitResult Judge(Visit visit)
    {
        OwnBands? bands;
        lock (Gate)
        {
            if (!Bands.TryGetValue(visit.Machine.Kind, out bands))
            {
                Bands[visit.Machine.Kind] = bands = OwnBands.Of(TypicalMachines.Of(visit.Machine.Kind));
            }

            return VisitJudgement.Judge(visit, BuiltInKnowledge.Trade, Rules, bands);
        }
    }

    public static Amount Fahrenheit(double value) => new(value, Units.Fahrenheit);

    public static Amount Milligram(double value) => new(value, Units.MilligramPerLitre);

    public static IEnumerable<VisitReading> ConveyorReadings(VisitMoment moment, double minute)
    {
        yield return Read("rd-wash-temp", Fahrenheit(160), moment, minute);
        yield return Read("rd-power-rinse-temp", Fahrenheit(168), moment, minute + 1);
        yield return Read("rd-final-rinse-temp", Fahrenheit(188), moment, minute + 2);
        for (var rack = 0; rack < 3; rack++)
        {
            yield return Read("rd-ware-surface-temp", Fahrenheit(166), moment, minute + 3 + rack) with
            {
                Method = ReadingMethod.MaximumThermometer,
            };
        }

        yield return Read("rd-rinse-pressure", new Amount(20, Units.Psi), moment, minute + 6) with
        {
            Instrument = "gauge",
        };
        yield return Read("rd-conveyor-speed", new Amount(5.6, Units.FootPerMinute), moment, minute + 7) with
        {
            Method = ReadingMethod.Stopwatch,
            Instrument = null,
        };
        yield return Read("rd-detergent", new Amount(1.5, Units.GramPerLitre), moment, minute + 8) with
        {
            Method = ReadingMethod.TestKit,
            Instrument = null,
        };
    }

    public static IEnumerable<VisitReading> DoorReadings(VisitMoment moment, double minute, double chlorine)
    {
        yield return Read("rd-wash-temp", Fahrenheit(127), moment, minute);
        yield return Read("rd-final-rinse-temp", Fahrenheit(126), moment, minute + 1);
        for (var rack = 0; rack < 3; rack++)
        {
            yield return Strip(chlorine, moment, minute + 2 + rack);
        }

        yield return Read("sanitizer-ph", new Amount(8, Units.PH), moment, minute + 5) with
        {
            Method = ReadingMethod.TestKit,
            Instrument = null,
        };
        yield return Read("sanitizer-contact-time", new Amount(12, Units.Second), moment, minute + 6) with
        {
            Method = ReadingMethod.Stopwatch,
            Instrument = null,
        };
    }

    public static VisitReading Strip(double chlorine, VisitMoment moment, double minute) =>
        Read("rd-sanitizer", Milligram(chlorine), moment, minute) with
        {
            Method = ReadingMethod.Strip,
            Instrument = null,
            Supply = "chlorine strips",
        };

    public static VisitReading Read(
        string kind,
        Amount value,
        VisitMoment moment,
        double minute,
        OperatingState state = OperatingState.Load
    ) => new(kind, value, moment, state) { Instrument = "probe", At = Morning.AddMinutes(minute) };

    private static Dictionary<string, Instrument> Probes =>
        new(StringComparer.Ordinal)
        {
            ["probe"] = new("Probe no. 4", new Amount(1, Units.FahrenheitDifference), new DateOnly(2026, 6, 2), new DateOnly(2027, 6, 2)),
            ["gauge"] = new("Test gauge no. 1", new Amount(1, Units.Psi), new DateOnly(2026, 3, 10), new DateOnly(2027, 3, 10)),
        };

    private static Dictionary<string, TestSupply> Strips =>
        new(StringComparer.Ordinal)
        {
            ["chlorine strips"] = new(SanitizingMethod.Chlorine, "C26-118", new DateOnly(2027, 4, 30)),
            ["quat strips"] = new(SanitizingMethod.QuaternaryAmmonium, "Q26-02", new DateOnly(2027, 4, 30)),
            ["old strips"] = new(SanitizingMethod.Chlorine, "C23-001", new DateOnly(2024, 4, 30)),
        };
}
