using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Xunit;

namespace Rinsewright.Engine.Tests.Sanitization;

/// <summary>What can be typed at all. The bounds are ours (common sense, no source): water between ice and steam, pH on its scale.</summary>
public class TypedRangeTests
{
    [Theory]
    [InlineData(MeasuringPoint.WareSurface, 100000, "[degF]", false)]
    [InlineData(MeasuringPoint.WareSurface, 200, "[degF]", true)]
    [InlineData(MeasuringPoint.WareSurface, -1, "Cel", false)]
    [InlineData(MeasuringPoint.WashTank, 400, "[degF]", false)]
    [InlineData(MeasuringPoint.WashTank, 32, "[degF]", true)]
    [InlineData(MeasuringPoint.FinalRinseManifold, 110, "Cel", true)]
    [InlineData(MeasuringPoint.SanitizingSolution, 1000, "[degF]", false)]
    [InlineData(MeasuringPoint.SanitizingSolution, -1, "[pH]", false)]
    [InlineData(MeasuringPoint.SanitizingSolution, 14.1, "[pH]", false)]
    [InlineData(MeasuringPoint.SanitizingSolution, 7, "[pH]", true)]
    [InlineData(MeasuringPoint.SanitizingSolution, -5, "mg/L", false)]
    [InlineData(MeasuringPoint.SanitizingSolution, 0, "mg/L", true)]
    [InlineData(MeasuringPoint.SanitizingSolution, 2001, "mg/L", false)]
    [InlineData(MeasuringPoint.Unknown, 2.5, "g/L", true)] // detergent as usual
    [InlineData(MeasuringPoint.Unknown, 2500, "mg/L", true)] // dissolved solids of a salty well
    [InlineData(MeasuringPoint.Unknown, 150, "g/L", false)]
    [InlineData(MeasuringPoint.Unknown, 95, "min", true)] // heat-up with an element failed
    [InlineData(MeasuringPoint.Unknown, 0, "[degF]{diff}", true)] // a gauge without error
    [InlineData(MeasuringPoint.Unknown, -2, "[degF]{diff}", true)]
    [InlineData(MeasuringPoint.Unknown, 0.4, "[pH]{diff}", true)]
    [InlineData(MeasuringPoint.Unknown, 8.3, "[pH]{diff}", false)]
    [InlineData(MeasuringPoint.FinalRinseLine, 201, "[psi]", false)]
    [InlineData(MeasuringPoint.FinalRinseLine, 0, "[psi]", true)]
    public void What_cannot_be_is_refused_with_its_range(MeasuringPoint point, double value, string unit, bool possible)
    {
        var refusal = TypedRange.Refusal(point, new Amount(value, Units.Find(unit)!));
        Assert.Equal(possible, refusal is null);
        if (refusal is not null)
        {
            Assert.Contains(refusal.Values, v => v.Name == "low" && v.Value is Amount { Unit: var low } && low.Ucum == unit);
            Assert.Contains(refusal.Values, v => v.Name == "high");
        }
    }

    [Theory]
    [InlineData(MeasuringPoint.WareSurface, 71, "[degF]", "Cel")]
    [InlineData(MeasuringPoint.WareSurface, 160, "Cel", "[degF]")]
    [InlineData(MeasuringPoint.WareSurface, 150, "[degF]", null)]
    [InlineData(MeasuringPoint.FinalRinseManifold, 82, "[degF]", "Cel")]
    [InlineData(MeasuringPoint.SanitizingSolution, 24, "[degF]", "Cel")]
    [InlineData(MeasuringPoint.SanitizingSolution, 75, "[degF]", null)]
    public void A_number_that_fits_the_other_degrees_is_asked_about(MeasuringPoint point, double value, string unit, string? meant) =>
        Assert.Equal(meant, TypedRange.For(point, Dimension.Temperature)!.Meant(new Amount(value, Units.Find(unit)!))?.Unit.Ucum);

    [Theory]
    [InlineData(0, false)]
    [InlineData(-3, false)]
    [InlineData(0.1, true)]
    [InlineData(3, true)]
    [InlineData(19, false)]
    public void No_thermometer_is_without_error(double halfWidthF, bool possible) =>
        Assert.Equal(possible, TypedRange.AccuracyRefusal(new Amount(halfWidthF, Units.FahrenheitDifference)) is null);
}
