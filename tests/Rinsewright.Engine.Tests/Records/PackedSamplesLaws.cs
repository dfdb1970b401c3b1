using CsCheck;
using Rinsewright.Engine.Records;
using Xunit;

namespace Rinsewright.Engine.Tests.Records;

/// <summary>Packing never changes a sample: what came in comes out, bit for bit, whatever its decimals.</summary>
public sealed class PackedSamplesLaws
{
    [Fact]
    public void What_came_in_comes_out() =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[1, 13_000], Gen.Int[0, int.MaxValue])
            .Sample(
                (kind, count, seed) =>
                {
                    var random = new Random(seed);
                    var samples = new PackedSamples();
                    var expected = new double[count];
                    for (var i = 0; i < count; i++)
                    {
                        expected[i] = kind switch
                        {
                            0 => random.Next(-300, 300),
                            1 => random.Next(-3000, 3000) / 10.0,
                            2 => random.Next(-90_000, 90_000) / 100.0,
                            3 => random.Next(-900_000, 900_000) / 1000.0,
                            4 => random.NextDouble() * 100,
                            _ => random.Next(0, 4096) == 0 ? random.NextDouble() * 1e12 : random.Next(0, 1000) / 10.0,
                        };
                        samples.Add(expected[i]);
                    }

                    var copied = new double[count];
                    samples.CopyTo(0, copied);
                    Assert.Equal(expected, copied);
                    var at = random.Next(0, count);
                    Assert.Equal(expected[at], samples[at]);
                    var part = new double[count - at];
                    samples.CopyTo(at, part);
                    Assert.Equal(expected[at..], part);
                },
                iter: 100
            );
}
