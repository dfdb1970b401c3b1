using CsCheck;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Xunit;

namespace Rinsewright.Engine.Tests.Records;

public class TraceTests
{
    [Fact]
    public void What_goes_in_comes_out() =>
        Gen.Select(Gen.Int[0, 5000].Array[1, 9000], Gen.Double[-40, 200].Array[9000])
            .Sample(
                (steps, values) =>
                {
                    var builder = new TraceBuilder();
                    long now = 0;
                    var times = new List<long>();
                    for (var i = 0; i < steps.Length; i++)
                    {
                        // Mostly regular, as loggers are.
                        now += steps[i] % 7 == 0 ? steps[i] : 1000;
                        times.Add(now);
                        builder.Add(now, values[i]);
                    }

                    var trace = builder.Build(Units.Celsius);
                    Assert.Equal(steps.Length, trace.Count);
                    var seconds = new double[trace.Count];
                    var samples = new double[trace.Count];
                    trace.CopyTo(0, seconds, samples);
                    for (var i = 0; i < trace.Count; i++)
                    {
                        Assert.Equal(times[i] / 1000.0, seconds[i]);
                        Assert.Equal(times[i] / 1000.0, trace.SecondsAt(i));
                        Assert.Equal(values[i], samples[i]);
                    }
                },
                iter: 30
            );

    [Fact]
    public void A_missing_hour_is_a_gap_and_the_usual_step_is_kept()
    {
        var trace = TraceBuilder.From("t", Units.Celsius, [0, 5, 10, 3610, 3615], [1, 2, 3, 4, 5]);
        Assert.Equal(5, trace.IntervalSeconds);
        var gap = Assert.Single(trace.Marks);
        Assert.Equal((TraceMarkKind.Gap, 3), (gap.Kind, gap.First));
    }

    [Fact]
    public void Time_never_goes_back_and_samples_are_numbers()
    {
        var builder = new TraceBuilder();
        builder.Add(1000, 20);
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.Add(999, 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.Add(2000, double.NaN));
    }

    [Fact]
    public void Neighbouring_fault_rows_are_one_mark()
    {
        var builder = new TraceBuilder();
        builder.Add(0, 20);
        builder.Mark(TraceMarkKind.Fault, "-200", line: 3);
        builder.Mark(TraceMarkKind.Fault, "-200", line: 4);
        builder.Add(3000, 21);
        var mark = Assert.Single(builder.Build(Units.Celsius).Marks);
        Assert.Equal((2, 3L, 1), ((int)mark.Rows, mark.Line, mark.First));
    }
}
