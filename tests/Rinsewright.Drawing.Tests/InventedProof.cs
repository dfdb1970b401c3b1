using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Drawing.Tests;

/// <summary>
/// A hand-made proof of an invented two-tank conveyor: every figure is made up for drawing and printing, none is a result of the engine.
/// </summary>
internal static class InventedProof
{
    public static readonly CitationDto FoodCode = new(
        "wac-246-215",
        "4-703.11(B)",
        "FDA Food Code",
        "United States, as states adopt it",
        "2022",
        "opened"
    );
    public static readonly CitationDto RinseCode = FoodCode with { Locator = "4-501.112(A)(2)" };
    public static readonly CitationDto DoseStandard = new(
        "hue-history-2009",
        "pass criterion",
        "NSF/ANSI 3, heat unit equivalents",
        null,
        "2009 account",
        "opened"
    );
    public static readonly LimitDto PeakLimit = new("ware-surface-peak", "wareSurface", "minimum", [F(160), C(71)], "rule", FoodCode);
    public static readonly LimitDto DoseLimit = new(
        "ware-surface-heat-dose",
        "wareSurface",
        "minimum",
        [new(3600, "{HUE}")],
        "standard",
        DoseStandard
    );
    public static readonly LimitDto RinseLimit = new("final-rinse", "finalRinseManifold", "minimum", [F(180), C(82)], "rule", RinseCode);
    public static readonly LimitDto WashLimit = new(
        "wash",
        "washTank",
        "minimum",
        [F(150), C(66)],
        "rule",
        FoodCode with
        {
            Locator = "4-501.110(A)(4)",
        }
    );
    public static readonly LimitDto PressureLimit = new(
        "pressure",
        "finalRinseLine",
        "minimum",
        [new(15, "[psi]")],
        "commonPractice",
        new("tradition", "", "older rules", null, null, "commonPractice")
    );

    // Seconds, °F: knots of a plate's way through the machine; between them straight.
    private static readonly (double S, double T)[] Knots =
    [
        (0, 76),
        (4, 77),
        (5, 112),
        (6, 128),
        (8, 138),
        (11, 146),
        (16, 152),
        (22, 156),
        (23, 154.5),
        (25, 151),
        (26, 157),
        (28, 160.2),
        (32, 162),
        (40, 163.6),
        (41, 162.8),
        (43, 162.2),
        (44, 167),
        (45.5, 169.4),
        (47, 171),
        (48, 169.8),
        (50, 167),
        (54, 162),
        (60, 155),
        (66, 150),
    ];

    public static AmountDto F(double v) => new(v, "[degF]");

    public static AmountDto C(double v) => new(v, "Cel");

    public static StatementDto Says(string text) => new("basis.common-practice", [new("text", Text: text)]);

    public static CurveDto Curve(double offset)
    {
        List<double> seconds = [],
            values = [],
            dose = [];
        var sum = 0.0;
        for (var i = 0; i <= 66; i++)
        {
            var k = Array.FindLastIndex(Knots, p => p.S <= i);
            var t =
                k == Knots.Length - 1
                    ? Knots[k].T
                    : Knots[k].T + ((Knots[k + 1].T - Knots[k].T) * (i - Knots[k].S) / (Knots[k + 1].S - Knots[k].S));
            t += i > 4 ? offset : 0;
            // A made-up dose that doubles every 2.6 °F: only the look of the curve matters here.
            sum += t > 143 ? Math.Pow(2, (Math.Min(t, 165) - 143) / 2.6) : 0;
            seconds.Add(i);
            values.Add(Math.Round(t, 1));
            dose.Add(Math.Round(sum));
        }

        return new CurveDto([.. seconds], [.. values], [.. dose]);
    }

    public static PassDto Pass(int number, double offset, string channel = "plate logger")
    {
        var start = 40 + ((number - 1) * 150.0);
        var clock = new DateTime(2026, 11, 20, 13, 35, 0).AddSeconds(start);
        var curve = Curve(offset);
        var peak = F(curve.Values.Max());
        var dose = curve.HeatUnits[^1];
        var doseFine =
            dose * 0.88 >= 3600 ? "inRange"
            : dose * 1.14 < 3600 ? "outOfRange"
            : "nearLimit";
        var outcome = doseFine switch
        {
            "inRange" => "proven",
            "outOfRange" => "notProven",
            _ => "undetermined",
        };
        return new PassDto(
            channel,
            number,
            clock,
            clock.AddSeconds(66),
            start,
            start + 47,
            start + 66,
            peak,
            new BoundedDto(dose, Math.Round(dose * 0.88), Math.Round(dose * 1.14)),
            new BoundedDto(14.2, 12.1, 16.8),
            [
                new ZoneDto("zone.wash", start + 4, start + 22, F(156)),
                new ZoneDto("zone.pumped-rinse", start + 25, start + 40, F(163.6)),
                new ZoneDto("zone.final-rinse", start + 43, start + 47, peak),
            ],
            [
                new CheckDto(
                    "heat-dose",
                    outcome,
                    doseFine,
                    new(dose, "{HUE}"),
                    new(Math.Round(dose * 0.88), "{HUE}"),
                    new(Math.Round(dose * 1.14), "{HUE}"),
                    DoseLimit,
                    "Invented reason.",
                    Says("dose"),
                    [],
                    [],
                    null
                ),
                new CheckDto(
                    "peak",
                    "proven",
                    "inRange",
                    peak,
                    F(peak.Value - 0.9),
                    F(peak.Value + 0.9),
                    PeakLimit,
                    "Invented reason.",
                    Says("peak"),
                    [],
                    [],
                    null
                ),
            ],
            outcome,
            ["Invented reason."],
            [Says("pass")],
            curve
        );
    }

    public static ChannelDto Channel(IReadOnlyList<PassDto> passes, params MarkDto[] marks)
    {
        List<double> seconds = [],
            values = [];
        var last = 0.0;
        foreach (var pass in passes)
        {
            for (var s = last; s < pass.StartSeconds; s += 5)
            {
                if (marks.Any(m => m.Kind == "gap" && s > m.FromSeconds && s < m.ToSeconds))
                {
                    continue;
                }

                seconds.Add(s);
                values.Add(Math.Round(76 + (last > 0 ? 50 * Math.Exp(-(s - last) / 40) : 0), 1));
            }

            seconds.AddRange(pass.Curve.Seconds.Select(s => s + pass.StartSeconds));
            values.AddRange(pass.Curve.Values);
            last = pass.EndSeconds + 1;
        }

        return new ChannelDto(
            passes[0].Channel,
            "[degF]",
            seconds.Count,
            new(1, "s"),
            "wareSurface",
            new DateTime(2026, 11, 20, 13, 35, 0),
            TimeSpan.FromHours(-7),
            marks,
            [],
            [],
            [.. seconds],
            [.. values]
        );
    }

    public static CheckDto RinseReading(double value = 177.2, string status = "outOfRange", string outcome = "notProven") =>
        new(
            "finalRinseManifold-temperature",
            outcome,
            status,
            F(value),
            null,
            null,
            RinseLimit,
            "Invented reason.",
            Says("rinse"),
            [],
            [],
            new ReadingDto(
                "finalRinseManifold",
                F(value),
                "probe",
                new InstrumentDto("Probe no. 4", new(0.9, "[degF]{diff}"), new DateOnly(2026, 9, 14)),
                new DateTimeOffset(2026, 11, 20, 13, 41, 0, TimeSpan.FromHours(-7))
            )
        );

    public static CheckDto NotRead(string point, LimitDto limit) =>
        new(point, "undetermined", "notRead", null, null, null, limit, "Not read.", Says("not read"), [], [], null);

    public static ProofReport Report(params double[] offsets) => Report(offsets.Length == 0 ? [0.5, 0.1, 0, -0.4, 0.2] : offsets, "proven");

    public static ProofReport Report(double[] offsets, string verdict, CheckDto[]? checks = null, params MarkDto[] marks)
    {
        var passes = offsets.Select((o, i) => Pass(i + 1, o)).ToArray();
        return new ProofReport(
            ProofReport.CurrentSchema,
            "tray-7.csv",
            1240,
            3,
            [
                new(118, "No number in the temperature column."),
                new(119, "No number in the temperature column."),
                new(733, "The row stops before the temperature."),
            ],
            [
                new("separator", "comma", "Every row parts into two columns at commas.", "inferred", ["semicolon", "tab"]),
                new("date-order", "mdy", "The second figure goes past 12 in 61 rows.", "inferred", ["dmy"]),
                new("unit[1]", "[degF]", "The heading says F.", "read", ["Cel"]),
            ],
            [Channel(passes, marks)],
            passes,
            checks ?? [NotRead("finalRinseManifold", RinseLimit), NotRead("washTank", WashLimit)],
            [PeakLimit, DoseLimit, RinseLimit, WashLimit, PressureLimit],
            verdict,
            ["The heat dose is met on every pass, even at its lower bound.", "The final rinse was not read."],
            [],
            [],
            [],
            new TermsDto(
                "multitankConveyor",
                "hotWater",
                "fda-food-code",
                "FDA Food Code, mechanical warewashing",
                "2022",
                new InstrumentDto(
                    "Plate logger no. 7",
                    new(0.9, "[degF]{diff}"),
                    new DateOnly(2026, 6, 2),
                    new DateOnly(2027, 6, 2),
                    null,
                    "TV-0007"
                ),
                new(0.9, "[degF]{diff}"),
                true,
                F(165),
                F(143)
            )
        );
    }
}
