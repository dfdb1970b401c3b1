using CsCheck;
using Rinsewright.Files.Loggers;
using Xunit;

namespace Rinsewright.Files.Tests.Loggers;

/// <summary>Laws of the reader over random series in random dialects.</summary>
public sealed class ReaderLaws
{
    // The day is above 12, so that the file settles its date order.
    private static readonly Gen<WrittenFile> Files = Gen.Select(
        Gen.Select(Gen.Int[0, 6], Gen.Int[0, 2].Select(i => ",;\t"[i]), Gen.Bool),
        Gen.Select(Gen.Int[0, 2], Gen.Bool, Gen.Bool),
        Gen.Select(Gen.Int[2005, 2060], Gen.Int[1, 12], Gen.Int[13, 27], Gen.Int[0, 86_399]),
        Gen.Int[1, 300],
        Gen.Int[200, 950].Array[3, 60],
        (form, clock, day, step, tenths) =>
            new WrittenFile(
                form.Item1,
                form.Item2,
                form.Item3,
                clock.Item1,
                clock.Item2,
                clock.Item3,
                new DateTime(day.Item1, day.Item2, day.Item3).AddSeconds(day.Item4),
                step,
                [.. tenths.Select(t => t / 10.0)]
            )
    );

    [Fact]
    public async Task Whatever_the_dialect_the_same_samples_come_back() =>
        await Files.SampleAsync(
            async file =>
            {
                var read = await Read(file.Bytes(file.Lines()));
                var channel = Assert.Single(read.Channels);
                Assert.Equal(0, read.RejectedCount);
                Assert.Equal(file.Fahrenheit ? "[degF]" : "Cel", channel.Trace.Unit.Ucum);
                Assert.Equal(file.Values, Enumerable.Range(0, channel.Trace.Count).Select(channel.Trace.ValueAt));
                Assert.Equal(file.Start, channel.Trace.Start);
                Assert.Equal(
                    Enumerable.Range(0, file.Values.Length).Select(i => (double)i * file.Step),
                    Enumerable.Range(0, channel.Trace.Count).Select(channel.Trace.SecondsAt)
                );
            },
            iter: 300
        );

    [Fact]
    public async Task Damage_to_one_row_costs_that_row_alone() =>
        await Gen.Select(Files, Gen.Int[0, 1000], Gen.Int[0, 2].Select(i => "x!§"[i].ToString()))
            .SampleAsync(
                async (file, pick, damage) =>
                {
                    var row = pick % file.Values.Length;
                    var lines = file.Lines();
                    var digit = lines[row + 1].LastIndexOfAny(['0', '1', '2', '3', '4', '5', '6', '7', '8', '9']);
                    lines[row + 1] = lines[row + 1].Remove(digit, 1).Insert(digit, damage);
                    var read = await Read(file.Bytes(lines));
                    Assert.Equal(row + 2, Assert.Single(read.Rejected).Line);
                    var trace = Assert.Single(read.Channels).Trace;
                    Assert.Equal(file.Values.Where((_, i) => i != row), Enumerable.Range(0, trace.Count).Select(trace.ValueAt));
                },
                iter: 300
            );

    [Fact]
    public async Task A_long_file_reads_the_same_behind_its_sample()
    {
        // More rows than the sample has, with a fault, a wrong stamp and a damaged row far behind it.
        var values = Enumerable.Range(0, 30_000).Select(i => 60 + (i * 37 % 200 / 10.0)).ToArray();
        var file = new WrittenFile(
            0,
            ',',
            DecimalComma: false,
            0,
            TwelveHour: false,
            Fahrenheit: false,
            new DateTime(2031, 4, 8, 21, 0, 0),
            1,
            values
        );
        var lines = file.Lines();
        lines[20_001] = lines[20_001].Split(',')[0] + ",OL";
        lines[25_001] = "2091" + lines[25_001][4..];
        lines[29_001] = lines[29_001] + "x";
        var read = await Read(file.Bytes(lines));
        var trace = Assert.Single(read.Channels).Trace;
        Assert.Equal([25_002L, 29_002L], read.Rejected.Select(r => r.Line));
        Assert.Equal(29_997, trace.Count);
        Assert.Equal(values[^1], trace.ValueAt(29_996));
        Assert.Equal(29_999, trace.SecondsAt(29_996));
        Assert.Equal(30_000, read.Rows);
    }

    [Fact]
    public async Task A_day_above_twelve_far_behind_the_sample_settles_the_order()
    {
        var values = Enumerable.Range(0, 20_000).Select(i => 60 + (i * 37 % 200 / 10.0)).ToArray();
        var file = new WrittenFile(
            0,
            ';',
            DecimalComma: true,
            1,
            TwelveHour: false,
            Fahrenheit: false,
            new DateTime(2031, 4, 5, 21, 0, 0),
            60,
            values
        );
        var read = await Read(file.Bytes(file.Lines()));
        var order = read.Decisions.Single(d => d.Id == "date-order");
        Assert.Equal(("dmy", DecisionBasis.Inferred), (order.Value, order.Basis));
        Assert.Equal(20_000, Assert.Single(read.Channels).Trace.Count);
    }

    [Fact]
    public async Task Reading_stops_when_asked()
    {
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            LoggerReader.ReadAsync(new MemoryStream("a,b\n1,2\n"u8.ToArray()), "x", new(), stop.Token)
        );
    }

    private static Task<LoggerFile> Read(byte[] bytes) =>
        LoggerReader.ReadAsync(new MemoryStream(bytes), "law.csv", new LoggerReaderOptions(), CancellationToken.None);
}
