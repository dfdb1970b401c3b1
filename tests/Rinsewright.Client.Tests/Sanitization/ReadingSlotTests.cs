using Rinsewright.Client.Parts;
using Rinsewright.Client.Sanitization;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Xunit;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>Typed readings, decisions and band strips become what is asked of the engine.</summary>
public sealed class ReadingSlotTests
{
    private static readonly CitationDto Source = new("wac-246-215", "4-501.112(A)(2)", "FDA Food Code", null, null, "opened");

    /// <summary>One slot holds one reading; emptying it takes the reading away and leaves the others.</summary>
    [Fact]
    public void A_slot_holds_one_reading()
    {
        var wash = ReadingSlot.Machine.First(s => s.Id == "wash");
        var rinse = ReadingSlot.Machine.First(s => s.Id == "final-rinse");
        var request = wash.Put(new ProofRequest(), new ReadingDto("washTank", new AmountDto(158, "[degF]"), "probe"));
        request = rinse.Put(request, new ReadingDto("finalRinseManifold", new AmountDto(82.5, "Cel"), "machineGauge"));
        request = wash.Put(request, new ReadingDto("washTank", new AmountDto(160, "[degF]"), "machineGauge"));
        Assert.Equal(2, request.Readings!.Count);
        Assert.Equal(160, wash.In(request)!.Value.Value);
        request = wash.Put(request, null);
        Assert.Null(wash.In(request));
        Assert.Equal(82.5, rinse.In(request)!.Value.Value);
    }

    /// <summary>Label and maximum thermometer are both read on the ware and do not take each other's place.</summary>
    [Fact]
    public void The_label_and_the_thermometer_on_the_ware_are_kept_apart()
    {
        var request = ReadingSlot.Label.Put(
            new ProofRequest(),
            new ReadingDto("wareSurface", new AmountDto(160, "[degF]"), "irreversibleLabel", Reached: true)
        );
        request = ReadingSlot.Maximum.Put(request, new ReadingDto("wareSurface", new AmountDto(171, "[degF]"), "maximumThermometer"));
        Assert.True(ReadingSlot.Label.In(request)!.Reached);
        Assert.Equal(171, ReadingSlot.Maximum.In(request)!.Value.Value);
    }

    /// <summary>Only what the machine and the method have is asked for.</summary>
    [Fact]
    public void Fields_follow_machine_and_method()
    {
        Assert.DoesNotContain(ReadingSlot.For(new ProofRequest(Machine: "singleTankConveyor")), s => s.Id == "pumped-rinse");
        Assert.DoesNotContain(ReadingSlot.For(new ProofRequest()), s => s.Id == "strength");
        Assert.Contains(ReadingSlot.For(new ProofRequest(Method: "quaternaryAmmonium")), s => s.Id == "hardness");
        Assert.DoesNotContain(ReadingSlot.For(new ProofRequest(Method: "chlorine")), s => s.Id == "hardness");
    }

    /// <summary>A decision given goes to the dialect or to its column.</summary>
    [Fact]
    public void A_decision_given_is_asked_of_the_reader()
    {
        var request = DecisionChange.Apply(new ProofRequest(), "date-order", "dmy");
        request = DecisionChange.Apply(request, "unit[2]", "Cel");
        request = DecisionChange.Apply(request, "role[2]", "washTank");
        Assert.Equal("dmy", request.Dialect!.DateOrder);
        Assert.Equal(new ChannelOverride(2, null, "washTank", "Cel"), Assert.Single(request.Channels!));
        Assert.False(DecisionChange.CanApply("uncertainty"));
    }

    /// <summary>The strip shows the figure printed in the unit of the field, not a converted one: 82 °C, not 82.2.</summary>
    [Fact]
    public void The_strip_shows_the_printed_limit()
    {
        LimitDto[] limits =
        [
            new("final-rinse", "finalRinseManifold", "minimum", [new AmountDto(180, "[degF]"), new AmountDto(82, "Cel")], "rule", Source),
            new("band", "finalRinseManifold", "maximum", [new AmountDto(190, "[degF]")], "commonPractice", Source),
        ];
        Assert.Equal(82, BandScale.For(limits, Units.Celsius, null).WallLow);
        Assert.Equal(180, BandScale.For(limits, Units.Fahrenheit, null).WallLow);
        Assert.Equal(87.8, BandScale.For(limits, Units.Celsius, null).UsualHigh!.Value, 9);
    }
}
