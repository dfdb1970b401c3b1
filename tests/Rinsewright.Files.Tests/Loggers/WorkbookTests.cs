using System.Globalization;
using System.IO.Compression;
using System.Text;
using Rinsewright.Files.Loggers;
using Xunit;

namespace Rinsewright.Files.Tests.Loggers;

/// <summary>Workbooks written by hand here: title cell, empty row, headings in row 3, elapsed seconds at uneven steps.</summary>
public sealed class WorkbookTests
{
    [Fact]
    public async Task The_sheet_with_readings_is_found_and_read()
    {
        double[] seconds = [0.76, 1.52, 2.16, 3.3, 4.04, 5.2];
        List<string[]> rows =
        [
            ["Thermocouple data taken on 2031-07-02 at 18:49:52 Central Daylight Time."],
            [],
        ];
        rows.Add(["Time (s)", "T1 Temperature (°C)", "T2 Temperature (°C)", "TC Type", "Battery"]);
        rows.AddRange(seconds.Select((s, i) => (string[])[Text(s), Text(71.4 + i), Text(71.5 + i), "K", "ok"]));
        var read = await Read(
            Book([
                (
                    "Notes",
                    [
                        ["nothing here"],
                    ]
                ),
                ("Data", rows),
            ])
        );
        Assert.Equal("Data", read.Decisions.Single(d => d.Id == "sheet").Value);
        Assert.Equal([1, 2], read.Channels.Select(c => c.Column));
        Assert.All(read.Channels, c => Assert.Equal(("Cel", 6), (c.Trace.Unit.Ucum, c.Trace.Count)));
        Assert.Equal(71.4, read.Channels[0].Trace.ValueAt(0));
        Assert.Equal(4.44, read.Channels[0].Trace.SecondsAt(5), 9);
        Assert.Null(read.Channels[0].Trace.Start);
        Assert.Contains(read.Preamble, p => p.Contains("Central Daylight Time", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_workbook_that_inflates_without_end_is_refused()
    {
        using var file = new MemoryStream();
        using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var part = zip.CreateEntry("xl/worksheets/sheet1.xml", CompressionLevel.Fastest).Open();
            var zeros = new byte[1 << 20];
            for (var i = 0; i < 220; i++)
            {
                part.Write(zeros);
            }
        }

        var refused = await Assert.ThrowsAsync<UnreadableFileException>(() => Read(file.ToArray()));
        Assert.Equal("files.workbook-too-large", refused.Says.Key);
    }

    [Fact]
    public async Task An_archive_that_is_no_workbook_is_refused()
    {
        using var file = new MemoryStream();
        using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var part = zip.CreateEntry("readings.csv").Open();
            part.Write("Time,Temp\n"u8);
        }

        var refused = await Assert.ThrowsAsync<UnreadableFileException>(() => Read(file.ToArray()));
        Assert.Equal("files.refused-archive", refused.Says.Key);
    }

    private static Task<LoggerFile> Read(byte[] bytes) =>
        LoggerReader.ReadAsync(new MemoryStream(bytes), "book.xlsx", new LoggerReaderOptions(), CancellationToken.None);

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);

    internal static byte[] Book((string Name, List<string[]> Rows)[] sheets)
    {
        using var file = new MemoryStream();
        using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            void Part(string name, string text)
            {
                using var part = zip.CreateEntry(name).Open();
                part.Write(Encoding.UTF8.GetBytes("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + text));
            }

            const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
            const string Rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
            var numbered = sheets.Select((s, i) => (s.Name, s.Rows, Number: i + 1)).ToList();
            Part(
                "[Content_Types].xml",
                "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"xml\" ContentType=\"application/xml\"/></Types>"
            );
            Part(
                "_rels/.rels",
                $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"r1\" Type=\"{Rel}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
            );
            Part(
                "xl/workbook.xml",
                $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Rel}\"><sheets>{string.Concat(numbered.Select(s => $"<sheet name=\"{s.Name}\" sheetId=\"{s.Number}\" r:id=\"r{s.Number}\"/>"))}</sheets></workbook>"
            );
            Part(
                "xl/_rels/workbook.xml.rels",
                $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">{string.Concat(numbered.Select(s => $"<Relationship Id=\"r{s.Number}\" Type=\"{Rel}/worksheet\" Target=\"worksheets/sheet{s.Number}.xml\"/>"))}</Relationships>"
            );
            foreach (var sheet in numbered)
            {
                var rows = string.Concat(
                    sheet.Rows.Select(
                        (r, i) => $"<row r=\"{i + 1}\">{string.Concat(r.Select((c, k) => Cell(c, $"{(char)('A' + k)}{i + 1}")))}</row>"
                    )
                );
                Part($"xl/worksheets/sheet{sheet.Number}.xml", $"<worksheet xmlns=\"{Main}\"><sheetData>{rows}</sheetData></worksheet>");
            }
        }

        return file.ToArray();
    }

    private static string Cell(string text, string place) =>
        double.TryParse(text, CultureInfo.InvariantCulture, out _)
            ? $"<c r=\"{place}\"><v>{text}</v></c>"
            : $"<c r=\"{place}\" t=\"inlineStr\"><is><t>{text}</t></is></c>";
}
