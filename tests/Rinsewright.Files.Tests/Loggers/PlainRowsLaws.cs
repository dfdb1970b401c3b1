using System.Globalization;
using System.Text;
using CsCheck;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Records;
using Rinsewright.Files.Loggers;
using Xunit;

namespace Rinsewright.Files.Tests.Loggers;

/// <summary>The fast way over regular rows and the long way over every row give one result, to the digit, on plain and almost plain files.</summary>
public sealed class PlainRowsLaws
{
    private static readonly string[] Numbers =
    [
        "",
        "OL",
        "-3.5",
        "0",
        "0.0",
        "-1",
        " 71.25 ",
        "\"68.4\"",
        "\"68.4",
        "68.4\"",
        "1e2",
        "71.6 °C",
        "7.12345678901234567",
        "451.5",
        "66.",
        ".5",
        "6 6",
        "+70.1",
        "−4.2",
        "70,5",
        "9999",
        "99",
        "\u00a071.0",
        "x",
    ];

    private static readonly string[] Words =
    [
        "",
        "ok",
        "Battery low",
        "Knopf gedrückt",
        "\"Battery, low\"",
        "\"open",
        "12",
        "°F",
        "°C",
        "f",
        "-",
    ];

    private static readonly string[] Beside = ["Unit", "Note", "State"];
    private static readonly string[] Usual = ["°C", "", "run"];

    private static readonly Gen<(int Row, int Column, int Kind)> Damage = Gen.Select(Gen.Int[0, 400], Gen.Int[0, 4], Gen.Int[0, 40]);

    private static readonly Gen<byte[]> Files = Gen.Select(
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 3].Select(i => ",;\t|"[i]), Gen.Int[0, 4]),
        Gen.Select(Gen.Int[0, 3], Gen.Bool, Gen.Bool, Gen.Int[1, 90]),
        Gen.Int[30, 980].Array[20, 200],
        Damage.Array[0, 8],
        (look, more, tenths, damage) => Write(look.Item1, look.Item2, look.Item3, more, tenths, damage)
    );

    [Fact]
    public async Task Both_ways_give_one_result() =>
        await Files.SampleAsync(
            async bytes =>
            {
                var slow = await Read(bytes, new LoggerReaderOptions { RowByRow = true });
                Assert.Equal(slow, await Read(bytes, new LoggerReaderOptions()));
            },
            iter: 1500
        );

    [Fact]
    public async Task A_mark_the_person_gave_is_a_fault_on_both_ways()
    {
        var bytes = Write(0, ',', 0, (0, false, false, 1), [.. Enumerable.Range(0, 100).Select(i => i % 9 == 4 ? 990 : 600 + i)], []);
        var overrides = new DialectOverrides { FaultMarks = ["99"] };
        var fast = await Read(bytes, new LoggerReaderOptions(overrides));
        Assert.Equal(await Read(bytes, new LoggerReaderOptions(overrides) { RowByRow = true }), fast);
        Assert.DoesNotContain(" 99\n", fast, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public async Task Blocks_end_anywhere_in_a_row(string end)
    {
        // Some blocks of bytes long; every seventh thousandth row is odd, and the last one has no end.
        var lines = Enumerable.Range(0, 40_000).Select(i => Line(0, ',', 0, i, 1, 600 + (i * 37 % 200)) + (i % 7000 == 6999 ? "?" : ""));
        var bytes = Encoding.UTF8.GetBytes("Date Time,Temp (°C)" + end + string.Join(end, lines));
        var fast = await Read(bytes, new LoggerReaderOptions());
        Assert.Equal(await Read(bytes, new LoggerReaderOptions { RowByRow = true }), fast);
        Assert.StartsWith("rows 40000 rejected 5\n", fast, StringComparison.Ordinal);
    }

    private static byte[] Write(
        int encoding,
        char separator,
        int clock,
        (int Beside, bool Quoted, bool Open, int Step) more,
        int[] tenths,
        (int Row, int Column, int Kind)[] damage
    )
    {
        string[] beside = [.. Beside.Take(more.Beside)];
        var lines = new List<string> { string.Join(separator, [clock == 4 ? "Unix Time" : "Date Time", "Temp (°C)", .. beside]) };
        var random = 0;
        for (var i = 0; i < tenths.Length; i++)
        {
            string[] cells =
            [
                .. Line(clock, separator, more.Quoted ? 1 : 0, i, more.Step, tenths[i]).Split(separator, 2),
                .. Usual.Take(more.Beside),
            ];
            foreach (var (_, column, kind) in damage.Where(d => d.Row % tenths.Length == i))
            {
                random += kind;
                if (column == 0)
                {
                    cells[0] = kind switch
                    {
                        < 10 => cells[0][..^1],
                        < 20 => "\"" + cells[0] + "\"",
                        < 25 => "\"" + cells[0],
                        < 30 => " " + cells[0] + " ",
                        < 35 => Line(clock, separator, 0, i - kind, more.Step, 0).Split(separator, 2)[0],
                        _ => cells[0] + "x",
                    };
                }
                else if (column < cells.Length)
                {
                    cells[column] = column == 1 ? Numbers[kind % Numbers.Length] : Words[kind % Words.Length];
                }
                else
                {
                    cells = (kind % 4) switch
                    {
                        0 when cells.Length > 1 => cells[..^1],
                        1 => [.. cells, ""],
                        2 => [.. cells, "tail"],
                        // Quotes around the whole row: one field, not the usual ones.
                        3 when cells.Length > 1 => ["\"" + cells[0], .. cells[1..^1], cells[^1] + "\""],
                        _ => cells,
                    };
                }
            }

            lines.Add(string.Join(separator, cells));
        }

        string[] ends = ["\n", "\r\n", "\r", "\n\n"];
        var text = new StringBuilder();
        foreach (var line in lines)
        {
            text.Append(line).Append(ends[random % ends.Length]);
        }

        Encoding bytes = encoding switch
        {
            0 => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            1 => new UTF8Encoding(encoderShouldEmitUTF8Identifier: true),
            2 => new UnicodeEncoding(bigEndian: false, byteOrderMark: true),
            3 => new UnicodeEncoding(bigEndian: true, byteOrderMark: true),
            _ => Encoding.Latin1,
        };
        var whole = text.ToString();
        return [.. bytes.GetPreamble(), .. bytes.GetBytes(more.Open ? whole.TrimEnd('\r', '\n') : whole)];
    }

    private static string Line(int clock, char separator, int quoted, int row, int step, int tenths)
    {
        var at = new DateTime(2031, 4, 18, 23, 58, 30).AddSeconds((double)row * step);
        var stamp = clock switch
        {
            0 => at.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
            1 => at.ToString("dd.MM.yyyy HH:mm:ss", CultureInfo.InvariantCulture),
            2 => at.ToString("M/d/yyyy h:mm:ss tt", CultureInfo.InvariantCulture),
            3 => at.ToString("yyyy-MM-ddTHH:mm:ss.fff", CultureInfo.InvariantCulture),
            _ => new DateTimeOffset(at, TimeSpan.Zero).ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture),
        };
        var number = (tenths / 10.0).ToString(tenths % 10 == 0 ? "0" : "0.0", CultureInfo.InvariantCulture);
        return quoted == 1 ? $"\"{stamp}\"{separator}\"{number}\"" : $"{stamp}{separator}{number}";
    }

    // All that the reader tells, as text; a refusal by its message.
    private static async Task<string> Read(byte[] bytes, LoggerReaderOptions options)
    {
        LoggerFile file;
        try
        {
            file = await LoggerReader.ReadAsync(new MemoryStream(bytes), "law.csv", options, CancellationToken.None);
        }
        catch (UnreadableFileException refused)
        {
            return Said(refused.Says);
        }

        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"rows {file.Rows} rejected {file.RejectedCount}\n");
        foreach (var row in file.Rejected)
        {
            text.Append(CultureInfo.InvariantCulture, $"line {row.Line} {Said(row.Reason)}\n");
        }

        foreach (var decision in file.Decisions)
        {
            text.Append(CultureInfo.InvariantCulture, $"{decision.Id} {decision.Value} {decision.Basis} {Said(decision.Because)}\n");
        }

        foreach (var happened in file.Events)
        {
            text.Append(CultureInfo.InvariantCulture, $"event {happened}\n");
        }

        foreach (var channel in file.Channels)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{channel.Column} {channel.Role} {channel.Trace.Start:O} {channel.Trace.Unit.Ucum}\n"
            );
            foreach (var mark in channel.Trace.Marks)
            {
                text.Append(CultureInfo.InvariantCulture, $"mark {mark}\n");
            }

            for (var i = 0; i < channel.Trace.Count; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $"{channel.Trace.SecondsAt(i):R} {channel.Trace.ValueAt(i):R}\n");
            }
        }

        return text.ToString();
    }

    private static string Said(Statement statement) =>
        statement.Key
        + " "
        + string.Join(", ", statement.Values.Select(v => string.Create(CultureInfo.InvariantCulture, $"{v.Name}={v.Value}")));
}
