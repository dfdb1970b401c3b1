using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using static Rinsewright.Engine.Tests.Bench.Asking;

namespace Rinsewright.Engine.Tests.Bench;

/// <summary>Use, cost, differences, strength to start from, vapour: hand calculations, each written beside its test.</summary>
public sealed class BenchCostVerification
{
    // A block of 3.6 kg gone in 4 days is 900 g a day. 60 L, 3 L a rack, 1.2 g/L, one fill and 150 racks should take 612: 288 more.
    private static readonly (string, double, Unit)[] Block =
    [
        ("drum", 3.6, Units.Kilogram),
        ("drumDays", 4, Units.One),
        ("racksPerDay", 150, Units.One),
        ("fillsPerDay", 1, Units.One),
        ("tank", 60, Units.Litre),
        ("rinsePerRack", 3, Units.Litre),
        ("strength", 1.2, Units.GramPerLitre),
    ];

    [Fact]
    public void Nothing_read_explains_nothing()
    {
        var answer = Ask("where-it-went", Block);

        Equal(answer, "shouldUse", 612, 1e-6);
        Equal(answer, "didUse", 900, 1e-6);
        Equal(answer, "unexplained", 288, 1e-6);
        Assert.Equal(
            [
                "bench.note.still-missing",
                "bench.note.read-titration",
                "bench.note.read-counter",
                "bench.note.read-level",
                "bench.note.read-bucket",
            ],
            answer.Notes.Select(n => n.Key).Take(5)
        );
    }

    // 180 racks counted: 30 · 3.6 g = 108 of the 288. A meter of 700 L: 60 + 180 · 3 = 600 went through the racks, 100 L more at 1.2 g/L are 120. A titration of 1.3: 700 · 0.1 = 70. Rest −10.
    [Fact]
    public void Each_reading_takes_its_part()
    {
        var answer = Ask(
            "where-it-went",
            [.. Block, ("racksCounted", 180, Units.One), ("waterMetered", 700, Units.Litre), ("strengthFound", 1.3, Units.GramPerLitre)]
        );

        Equal(answer, "byRacks", 108, 1e-6);
        Equal(answer, "byLostWater", 120, 1e-6);
        Equal(answer, "byStrength", 70, 1e-6);
        Equal(answer, "unexplained", -10, 1e-6);
        // √(45² + 13² + 42² + 54.6²) = 83
        Assert.Equal(83.3, (Of(answer, "unexplained").High!.Value.Value - -10), 0.1);
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.all-explained");
    }

    [Fact] // 4 L a rack instead of 3: 150 · 1 L · 1.2 g = 180
    public void A_longer_rinse_takes_its_part() =>
        Equal(Ask("where-it-went", [.. Block, ("rinseFound", 4, Units.Litre)]), "byRinse", 180, 1e-6);

    [Fact]
    public void What_four_good_readings_leave_was_taken_or_spilt()
    {
        var answer = Ask(
            "where-it-went",
            [
                .. Block,
                ("racksCounted", 150, Units.One),
                ("rinseFound", 3, Units.Litre),
                ("waterMetered", 510, Units.Litre),
                ("strengthFound", 1.2, Units.GramPerLitre),
                ("detergentPrice", 6, Units.One),
            ]
        );

        Equal(answer, "unexplained", 288, 1e-6);
        Equal(answer, "extraCostPerMonth", 30.4 * 0.288 * 6, 1e-6);
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.taken-or-spilt");
        Assert.DoesNotContain(answer.Notes, n => n.Key.StartsWith("bench.note.read-", StringComparison.Ordinal));
    }

    // 60 + 150 · 3 = 510 L. Heated by 100 °F = 55.56 K: 0.510 · 983 · 4186 · 55.56 / 3.6·10⁶ = 32.39 kWh at 0.15 = 4.858. Detergent 0.612 kg at 6 = 3.672. Water 0.510 m³ at 3 = 1.53.
    // Sanitizer 150 · 2 mL = 0.3 L at 4 = 1.2. Together 11.26 a day; 5.63 a shift of two; 342.3 a month of 30.4 days; 0.02815 for each of 400 covers.
    [Fact]
    public void A_day_a_shift_a_month_a_cover()
    {
        var answer = Ask(
            "use-and-cost",
            [
                .. Block.Where(b => b.Item1 is not ("drum" or "drumDays")),
                ("waterRise", 100, Units.FahrenheitDifference),
                ("sanitizerPerRack", 2, Units.Millilitre),
                ("detergentPrice", 6, Units.One),
                ("sanitizerPrice", 4, Units.One),
                ("waterPrice", 3, Units.One),
                ("energyPrice", 0.15, Units.One),
                ("coversPerDay", 400, Units.One),
            ]
        );

        Equal(answer, "heatPerDay", 32.39, 0.01);
        Equal(answer, "detergentPerShift", 306, 1e-6);
        Equal(answer, "costPerDay", 11.26, 0.005);
        Equal(answer, "costPerShift", 5.63, 0.005);
        Equal(answer, "costPerMonth", 342.3, 0.1);
        Equal(answer, "costPerCover", 0.02815, 0.00001);
    }

    // 2 · 70.03 L + 300 · 2 L = 740.06 L at 1.5 g/L: 1.110 kg a day, 33.75 kg a month at 6 = 202.5; the other two thirds of it at 8 = 180.0.
    [Fact]
    public void The_other_saves_a_month()
    {
        var answer = Ask("compare-products", ("rinsePerRack", 2, Units.Litre));

        Equal(answer, "costPerMonth", 202.5, 0.1);
        Equal(answer, "otherCostPerMonth", 180.0, 0.1);
        Equal(answer, "otherSaves", 22.5, 0.05);
    }

    [Theory] // Rows of the table: common practice, from memory; the middle by hand
    [InlineData(3, "light", 0.6, 0.8, 1.0)] // 51 mg/L
    [InlineData(10, "normal", 1.2, 1.6, 2.0)] // 171 mg/L
    [InlineData(15, "heavy", 2.5, 2.75, 3.0)] // 257 mg/L
    [InlineData(25, "normal", 2.5, 2.75, 3.0)] // 428 mg/L
    public void Strength_to_start_from(double grains, string soil, double low, double middle, double high)
    {
        var tool = BenchTools.Find("recommended-strength")!;
        var answer = tool.Solve(With(tool.Id, ("hardness", grains, Units.GrainPerGallon)).And("soil", soil)).Answer!;
        var start = Of(answer, "startAt");

        Assert.Equal(
            (low, middle, high),
            (Math.Round(start.Low!.Value.Value, 9), Math.Round(start.Value!.Value.Value, 9), Math.Round(start.High!.Value.Value, 9))
        );
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.label-rules");
    }

    [Fact]
    public void The_label_rules_over_what_is_usual()
    {
        var tool = BenchTools.Find("recommended-strength")!;
        var hard = With(tool.Id, ("hardness", 25, Units.GrainPerGallon)).And("soil", "light");
        Assert.Equal("hardness", Assert.Single(tool.Solve(hard).Problems).Field);

        var label = hard.And("labelLow", new Amount(3, Units.GramPerLitre)).And("labelHigh", new Amount(5, Units.GramPerLitre));
        var answer = tool.Solve(label).Answer!;
        Equal(answer, "startAt", 4, 1e-9);
        Assert.Contains(answer.Notes, n => n.Key == "bench.note.band-by-label");
        Assert.Equal("labelHigh", Assert.Single(tool.Solve(label.And("labelLow", new Amount(6, Units.GramPerLitre))).Problems).Field);
    }

    [Fact] // CHV123: 300 m³/h at 45 °C, room 25 °C and 50 %: 16.6 kg/h, 13.7 kW in all; at 0.15 over six hours 12.3
    public void Vapour()
    {
        var answer = Ask("vent-loss", ("energyPrice", 0.15, Units.One));

        Equal(answer, "exhaustHeat", 13.7, 0.2);
        Equal(answer, "exhaustVapour", 16.6, 0.2);
        Equal(answer, "costPerDay", 12.3, 0.2);
    }

    [Fact] // CHV068: 10.57 of 12.5 after 30 days at 75 °F, so 1.18 times as much
    public void Bleach()
    {
        var answer = Ask("bleach-age", ("pumpNow", 10, Units.MillilitrePerMinute));

        Equal(answer, "strengthLeft", 10.57, 0.05);
        Equal(answer, "moreByHand", 1.18, 0.01);
        Equal(answer, "pumpSetting", 11.8, 0.1);
        var left = Of(answer, "strengthLeft");
        Assert.True(left.Low!.Value.Value < left.Value!.Value.Value && left.Value.Value.Value < left.High!.Value.Value);
    }
}
