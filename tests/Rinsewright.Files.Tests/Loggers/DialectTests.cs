using System.Text;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Records;
using Rinsewright.Files.Loggers;
using Xunit;

namespace Rinsewright.Files.Tests.Loggers;

/// <summary>
/// One invented file for each dialect (see dialects/README.md). Expected values are those the files were written with: every file carries the
/// same twenty invented plate temperatures, 24.1 to 44.1 °C.
/// </summary>
public sealed class DialectTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Theory]
    [InlineData("d01.csv", 1, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:01:35")]
    [InlineData("d02.csv", 2, "Cel", "2031-04-08 23:59:00", "2031-04-09 00:00:35")]
    [InlineData("d03.csv", 2, "[degF]", "2031-04-28 21:00:00", "2031-04-28 21:01:35")]
    [InlineData("d04.csv", 1, "Cel", "2031-04-08 23:59:00", "2031-04-09 00:00:35")]
    [InlineData("d05.csv", 1, "Cel", "2031-04-08 23:59:00", "2031-04-09 00:00:35")]
    [InlineData("d06.csv", 2, "Cel", "2031-04-08 23:59:00", "2031-04-09 00:00:35")]
    [InlineData("d07.csv", 3, "Cel", "2031-04-28 11:59:00", "2031-04-28 12:00:35")]
    [InlineData("d08.csv", 3, "Cel", "2031-04-28 21:00:00", "2031-04-28 21:01:35")]
    [InlineData("d09.txt", 2, "Cel", "2031-04-08 23:59:00", "2031-04-09 00:00:35")]
    [InlineData("d10.csv", 1, "Cel", "2031-10-11 07:00:00", "2031-10-11 07:19:00")]
    [InlineData("d11.csv", 2, "Cel", "2031-04-28 21:00:00", "2031-04-28 21:01:35")]
    [InlineData("d13.csv", 2, "Cel", "2031-11-05 14:00:00", "2031-11-08 14:04:00")]
    [InlineData("d15.csv", 1, "Cel", "2031-05-18 22:00:00", "2031-05-18 22:03:10")]
    [InlineData("d23.dat", 2, "Cel", "2031-05-01 09:30:05", "2031-05-01 09:31:40")]
    [InlineData("d24.dat", 4, "Cel", "2031-09-15 23:55:00", "2031-09-16 00:14:00")]
    [InlineData("d25.csv", 1, "[degF]", "2031-04-07 16:51:00", "2031-04-07 17:10:00")]
    [InlineData("d26.txt", 2, "Cel", "2031-07-11 17:00:00", "2031-07-11 17:03:10")]
    [InlineData("d26-wrong-byte.txt", 2, "Cel", "2031-07-11 17:00:00", "2031-07-11 17:03:10")]
    [InlineData("coin.csv", 2, "Cel", "2031-04-08 11:50:00", "2031-04-08 12:09:00")]
    [InlineData("daemon-tabs.log", 1, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:19:00")]
    [InlineData("daemon-spaces.log", 3, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:19:00")]
    [InlineData("named.log", 2, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:01:35")]
    [InlineData("named-units.log", 3, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:01:35")]
    [InlineData("wrapped.csv", 1, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:19:00")]
    [InlineData("mixed-ends.csv", 1, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:19:00")]
    [InlineData("newest-first.csv", 1, "Cel", "2031-04-08 21:00:00", "2031-04-08 21:19:00")]
    [InlineData("serial-days.txt", 2, "Cel", "2032-04-07 17:30:00", "2032-04-07 17:49:00")]
    [InlineData("spreadsheet-serial.csv", 1, "Cel", "2032-04-07 21:00:00", "2032-04-07 21:19:00")]
    public async Task The_twenty_values_come_back(string file, int column, string unit, string first, string last)
    {
        var read = await Read(file);
        var channel = read.Channels.First(c => c.Column == column);
        Assert.Equal(unit, channel.Trace.Unit.Ucum);
        Assert.Equal(20, channel.Trace.Count);
        Assert.Equal(0, read.RejectedCount);
        Assert.Equal(first, FormattableString.Invariant($"{channel.Trace.TimeAt(0):yyyy-MM-dd HH:mm:ss}"));
        Assert.Equal(last, FormattableString.Invariant($"{channel.Trace.TimeAt(19):yyyy-MM-dd HH:mm:ss}"));
        Assert.Equal(unit == "Cel" ? 24.1 : 75.4, channel.Trace.ValueAt(0));
        Assert.Equal(unit == "Cel" ? 44.1 : 111.4, channel.Trace.ValueAt(19));
    }

    [Theory]
    [InlineData("d01.csv", "date-order", "dmy", DecisionBasis.Open)]
    [InlineData("d02.csv", "utc-offset", "-05:00", DecisionBasis.Read)]
    [InlineData("d03.csv", "date-order", "mdy", DecisionBasis.Inferred)]
    [InlineData("d06.csv", "decimal-mark", "point", DecisionBasis.Inferred)]
    [InlineData("d07.csv", "clock-hours", "12", DecisionBasis.Read)]
    [InlineData("d09.txt", "encoding", "utf-16le", DecisionBasis.Read)]
    [InlineData("d10.csv", "decimal-mark", "comma", DecisionBasis.Inferred)]
    [InlineData("d13.csv", "date-order", "mdy", DecisionBasis.Open)]
    [InlineData("d16.csv", "unit[3]", "Cel", DecisionBasis.Open)]
    [InlineData("d21.csv", "layout", "label-value", DecisionBasis.Inferred)]
    [InlineData("d24.dat", "layout", "row-kinds", DecisionBasis.Inferred)]
    [InlineData("named.log", "layout", "named-values", DecisionBasis.Inferred)]
    [InlineData("named.log", "unit[2]", "Cel", DecisionBasis.Read)]
    [InlineData("named-units.log", "unit[3]", "Cel", DecisionBasis.Read)]
    [InlineData("d26-wrong-byte.txt", "encoding", "windows-1252", DecisionBasis.Inferred)]
    [InlineData("coin.csv", "date-order", "mdy", DecisionBasis.Inferred)]
    [InlineData("coin.csv", "utc-offset", "-05:00", DecisionBasis.Read)]
    [InlineData("wrapped.csv", "wrapped", "rotated", DecisionBasis.Inferred)]
    public async Task Each_decision_says_on_what_it_rests(string file, string id, string value, DecisionBasis basis)
    {
        var decision = (await Read(file)).Decisions.Single(d => d.Id == id);
        Assert.Equal(value, decision.Value);
        Assert.Equal(basis, decision.Basis);
    }

    [Fact]
    public async Task A_wide_spread_of_faults_becomes_holes_with_their_reason()
    {
        var d14 = Assert.Single((await Read("d14.csv")).Channels).Trace;
        Assert.Equal(19, d14.Count);
        Assert.Contains(d14.Marks, m => m is { Kind: TraceMarkKind.Fault, Reason: "NA", First: 7, Line: 9 });
        Assert.Single((await Read("d16.csv")).Channels);
        Assert.Equal([3, 4, 5], (await Read("d17.csv")).Channels.Select(c => c.Column));
        var d18 = (await Read("d18.csv")).Channels;
        Assert.Equal([12, 20, 20], d18.Select(c => c.Trace.Count));
        Assert.Contains(d18[0].Trace.Marks, m => m is { Kind: TraceMarkKind.Fault, Reason: "-100", Rows: 8 });
        var zeros = Assert.Single((await Read("zeros.csv")).Channels).Trace;
        Assert.Equal(17, zeros.Count);
        Assert.Contains(zeros.Marks, m => m is { Kind: TraceMarkKind.Fault, Reason: "0", Rows: 3 });
    }

    [Fact]
    public async Task Damaged_rows_are_listed_by_line_and_the_rest_is_kept()
    {
        var d22 = await Read("d22.csv");
        Assert.Equal([5L, 10L, 15L], d22.Rejected.Select(r => r.Line));
        Assert.All(d22.Channels, c => Assert.Equal(17, c.Trace.Count));
        var cut = await Read("cut-off.csv");
        Assert.Equal(19, Assert.Single(cut.Channels).Trace.Count);
        Assert.Equal("files.row-cut", Assert.Single(cut.Rejected).Reason.Key);
        var hashes = await Read("spreadsheet-hashes.csv");
        Assert.Equal(3, hashes.RejectedCount);
        Assert.Equal(17, Assert.Single(hashes.Channels).Trace.Count);
    }

    [Fact]
    public async Task Event_rows_are_no_gaps()
    {
        var d10 = await Read("d10.csv");
        Assert.Equal([19L, 23L], d10.Events.Select(e => e.Line));
        Assert.Empty(Assert.Single(d10.Channels).Trace.Marks);
        Assert.Single((await Read("d08.csv")).Events);
    }

    [Fact]
    public async Task Clock_changes_are_marked_not_sorted()
    {
        var autumn = Assert.Single((await Read("autumn.csv")).Channels).Trace;
        Assert.Equal(36, autumn.Count);
        Assert.Contains(autumn.Marks, m => m is { Kind: TraceMarkKind.ClockBack, First: 18 });
        Assert.Equal(35 * 300.0, autumn.SecondsAt(35));
        var spring = Assert.Single((await Read("spring.csv")).Channels).Trace;
        Assert.Contains(spring.Marks, m => m is { Kind: TraceMarkKind.Gap, First: 12 });
    }

    [Fact]
    public async Task A_frozen_channel_is_told_from_a_steady_one()
    {
        var frozen = await Read("frozen.csv");
        Assert.Contains(frozen.Channels[0].Trace.Marks, m => m is { Kind: TraceMarkKind.Frozen, First: 20, Count: 50 });
        Assert.DoesNotContain(frozen.Channels[1].Trace.Marks, m => m.Kind == TraceMarkKind.Frozen);
    }

    [Theory]
    [InlineData("d12.csv", "files.no-readings")]
    [InlineData("volts.csv", "files.not-temperature")]
    [InlineData("split-decimals.csv", "files.decimal-split")]
    public async Task A_file_without_temperatures_is_refused_in_plain_words(string file, string key)
    {
        var refused = await Assert.ThrowsAsync<UnreadableFileException>(() => Read(file));
        Assert.Equal(key, refused.Says.Key);
    }

    [Theory]
    [InlineData("", "files.empty")]
    [InlineData("%PDF-1.7 x", "files.refused-pdf")]
    [InlineData("<html><body>", "files.refused-page")]
    [InlineData("Dear all,\nthe machine is fine.\n", "files.no-table")]
    [InlineData("PK\u0003\u0004 broken", "files.workbook-damaged")]
    public async Task Other_files_are_refused_in_plain_words(string text, string key)
    {
        var refused = await Assert.ThrowsAsync<UnreadableFileException>(() =>
            LoggerReader.ReadAsync(new MemoryStream(Encoding.UTF8.GetBytes(text)), "x", new(), Never)
        );
        Assert.Equal(key, refused.Says.Key);
    }

    [Fact]
    public async Task The_person_overrides_decisions()
    {
        var options = new LoggerReaderOptions(
            new DialectOverrides(DateOrder: "mdy", UtcOffset: "-06:00"),
            [new ChannelOverride(1, "Plate", "wareSurface", "[degF]")]
        );
        var read = await LoggerReader.ReadAsync(
            new MemoryStream(await File.ReadAllBytesAsync(PathOf("d01.csv"), Never)),
            "d01.csv",
            options,
            Never
        );
        var channel = Assert.Single(read.Channels);
        Assert.Equal(("Plate", "[degF]", MeasuringPoint.WareSurface), (channel.Trace.Name, channel.Trace.Unit.Ucum, channel.Role));
        Assert.Equal(new DateTime(2031, 8, 4, 21, 0, 0), channel.Trace.Start);
        Assert.Equal(TimeSpan.FromHours(-6), channel.Trace.UtcOffset);
        Assert.All(
            read.Decisions.Where(d => d.Id is "date-order" or "utc-offset" or "unit[1]" or "role[1]"),
            d => Assert.Equal(DecisionBasis.Given, d.Basis)
        );
    }

    [Fact]
    public async Task Random_bytes_are_refused_and_nothing_else_happens()
    {
        var random = new Random(31);
        for (var i = 0; i < 300; i++)
        {
            var bytes = new byte[random.Next(1, 3000)];
            random.NextBytes(bytes);
            if (i % 2 == 0)
            {
                // Text-like noise reaches deeper than plain noise.
                const string Alphabet = "0123456789.,;:-/ \t\n\r\"APMCF#";
                bytes = [.. bytes.Select(b => (byte)Alphabet[b % Alphabet.Length])];
            }

            try
            {
                var read = await LoggerReader.ReadAsync(new MemoryStream(bytes), "noise", new(), Never);
                Assert.NotEmpty(read.Channels);
            }
            catch (UnreadableFileException e)
            {
                Assert.StartsWith("files.", e.Says.Key, StringComparison.Ordinal);
            }
        }
    }

    private static string PathOf(string file) => Path.Combine(AppContext.BaseDirectory, "Loggers", "dialects", file);

    private static async Task<LoggerFile> Read(string file)
    {
        await using var stream = File.OpenRead(PathOf(file));
        return await LoggerReader.ReadAsync(stream, file, new LoggerReaderOptions(), Never);
    }

    // Common practice, no source: who writes °F writes the month first. The order stays open all the same.
    [Theory]
    [InlineData("Temp (°F)", "mdy")]
    [InlineData("Temp (°C)", "ymd")]
    public async Task An_open_order_is_first_tried_as_the_degrees_suggest(string heading, string order)
    {
        var text = $"Date;{heading}\n04.08.31 21:00:00;75.1\n04.08.31 21:00:05;75.3\n04.08.31 21:00:10;76.0\n";
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        var read = await LoggerReader.ReadAsync(stream, "open.csv", new LoggerReaderOptions(null, null, null), Never);
        var decision = read.Decisions.Single(d => d.Id == "date-order");
        Assert.Equal((order, DecisionBasis.Open), (decision.Value, decision.Basis));
        Assert.Equal(2, decision.Alternatives.Count);
    }
}
