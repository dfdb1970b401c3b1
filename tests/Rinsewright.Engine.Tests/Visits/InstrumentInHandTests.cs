using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Visits;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>A technician carries several instruments, and the one in hand is not always the one a reading was taken with.</summary>
public sealed class InstrumentInHandTests
{
    private static Visit ReadWith(string? instrument)
    {
        var visit = ConveyorSet();
        return visit with
        {
            Readings =
            [
                .. visit.Readings.Select(r => r.Kind.EndsWith("-temp", StringComparison.Ordinal) ? r with { Instrument = instrument } : r),
            ],
        };
    }

    [Fact]
    public void A_pressure_gauge_written_beside_temperatures_is_as_if_nobody_had_said_what_they_were_read_with()
    {
        var gauge = Judge(ReadWith("gauge"));
        var nothing = Judge(ReadWith(null));

        Assert.Equal(nothing.Standing, gauge.Standing);
        Assert.Equal(nothing.After.Verdict.Outcome, gauge.After.Verdict.Outcome);
        Assert.Equal(
            nothing.Readings.Select(r => (r.Reading.Kind, r.Status, r.Band)),
            gauge.Readings.Select(r => (r.Reading.Kind, r.Status, r.Band))
        );
    }

    [Fact]
    public void And_it_is_said()
    {
        Assert.Contains(Judge(ReadWith("gauge")).Missing, m => m.Says.Key == "visit.missing.other-instrument" && !m.Blocks);
        Assert.DoesNotContain(Judge(ReadWith("probe")).Missing, m => m.Says.Key == "visit.missing.other-instrument");
    }

    [Theory]
    [InlineData("[psi]", "[degF]", false)]
    [InlineData("[degF]{diff}", "[degF]", true)]
    [InlineData("K{diff}", "Cel", true)]
    [InlineData("[psi]", "kPa", true)]
    [InlineData("[degF]{diff}", "[psi]", false)]
    public void An_instrument_measures_what_its_accuracy_is_stated_in(string stated, string read, bool measures) =>
        Assert.Equal(measures, new Instrument("one", new Amount(1, Units.Find(stated)!)).Measures(Units.Find(read)!.Dimension));

    [Fact]
    public void One_of_which_nothing_is_stated_can_have_read_anything() =>
        Assert.All(Enum.GetValues<Dimension>(), d => Assert.True(new Instrument("one").Measures(d)));
}
