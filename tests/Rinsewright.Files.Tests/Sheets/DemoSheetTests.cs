using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Drawing;
using Rinsewright.Drawing.Tests;
using Rinsewright.Files.Demo;
using Rinsewright.Files.Sanitization;
using Rinsewright.Files.Sheets;
using Xunit;
using Findings = Rinsewright.Tests.Shared.Findings;
using Golden = Rinsewright.Tests.Shared.Golden;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>The engine's own proof of the invented two-tank file, drawn and printed: what the engine says is what the paper says.</summary>
public sealed class DemoSheetTests
{
    private static readonly ProofReport Report = Prove();

    [Theory]
    [InlineData("en", UnitDisplay.AsRead)]
    [InlineData("es", UnitDisplay.Si)]
    public void The_sheet_says_what_the_engine_says(string language, UnitDisplay units)
    {
        var document = InventedDocument.Of(Report) with { Note = null };
        var words = Words.For(language);
        using var pdf = PdfText.Open(ProofSheet.Make(document, new SheetOptions(Paper.Letter, language, units)));
        Assert.Equal(2, pdf.PageCount);
        var text = string.Concat(pdf.Pages.OfType<PdfSharp.Pdf.PdfPage>().Select(PdfText.Of)).Replace('\n', ' ');
        Assert.Equal(5, Report.Passes.Count);
        Assert.All(Report.Passes, p => Assert.Contains(words.Number(Math.Round(p.HeatUnits.Value), 0), text, StringComparison.Ordinal));
        Assert.DoesNotContain("[", text, StringComparison.Ordinal); // a key without its words shows in brackets
        // What the file itself says stays as it stands there; everything above it is in one system.
        var shown = text[..text.IndexOf("SHA-256", StringComparison.Ordinal)].Replace("°C, kPa", "", StringComparison.Ordinal);
        Assert.DoesNotContain(units == UnitDisplay.Si ? "°F" : "°C", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void In_Spanish_no_id_and_no_English_stands_on_the_sheet()
    {
        using var pdf = PdfText.Open(ProofSheet.Make(InventedDocument.Of(Report), new SheetOptions(Paper.Letter, "es")));
        var text = string.Concat(pdf.Pages.OfType<PdfSharp.Pdf.PdfPage>().Select(PdfText.Of)).Replace('\n', ' ');
        string[] strangers =
        [
            "wareSurface",
            "semicolon",
            "stamp",
            ": point",
            "ymd",
            "clock-hours",
            "pass criterion",
            "text of state",
            "heat unit",
            ": ;",
        ];
        Assert.All(strangers, s => Assert.DoesNotContain(s, text, StringComparison.Ordinal));
        Assert.Contains("punto y coma", text, StringComparison.Ordinal);
        Assert.Contains("superficie de la vajilla", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_signatures_stand_on_the_first_page()
    {
        using var pdf = PdfText.Open(ProofSheet.Make(InventedDocument.Of(One()), new SheetOptions(Paper.Letter, "en")));
        Assert.Contains(Words.For("en")["sheet.sign-name"], PdfText.Of(pdf.Pages[0]), StringComparison.Ordinal);

        static ProofReport One() => Report with { Passes = [Report.Passes[0]] };
    }

    // A sheet is one leaf: verdict, chart, passes and signatures in front, the rest behind.
    [Theory]
    [InlineData(Paper.Letter, "en")]
    [InlineData(Paper.Letter, "es")]
    [InlineData(Paper.A4, "en")]
    [InlineData(Paper.A4, "es")]
    public void Five_passes_are_signed_on_the_first_of_two_pages(Paper paper, string language)
    {
        Assert.Equal(5, Report.Passes.Count);
        using var pdf = PdfText.Open(ProofSheet.Make(InventedDocument.Of(Report), new SheetOptions(paper, language)));
        Assert.Contains(Words.For(language)["sheet.sign-name"], PdfText.Of(pdf.Pages[0]), StringComparison.Ordinal);
        Assert.Equal(2, pdf.PageCount);
    }

    [Theory]
    [InlineData(Paper.Letter, "en")]
    [InlineData(Paper.Letter, "es")]
    [InlineData(Paper.A4, "en")]
    [InlineData(Paper.A4, "es")]
    public void Four_readings_one_of_them_too_cold_and_a_long_note_take_two_pages(Paper paper, string language)
    {
        var report = Prove(
            new ReadingDto("washTank", new AmountDto(158.6, "[degF]"), "probe"),
            new ReadingDto("pumpedRinseTank", new AmountDto(164.1, "[degF]"), "probe"),
            new ReadingDto("finalRinseManifold", new AmountDto(177.2, "[degF]"), "probe"),
            new ReadingDto("finalRinseLine", new AmountDto(20.1, "[psi]"), "machineGauge")
        );
        Assert.Equal("notProven", report.Verdict);
        var document = InventedDocument.Of(report) with
        {
            Note =
                "Replaced the final rinse thermostat, cleaned the end caps, ran three racks. Booster set to 185 °F. Told the night crew to drain the tanks before closing and leave the doors open.",
        };
        using var pdf = PdfText.Open(ProofSheet.Make(document, new SheetOptions(paper, language)));
        Assert.Equal(2, pdf.PageCount);
    }

    // What the built-in sources are called has words in both languages; abbreviations and numbers alone need none.
    [Fact]
    public void Every_built_in_source_has_its_words()
    {
        var keys = Words.For("es").Keys.ToHashSet(StringComparer.Ordinal);
        var said = Engine.Sanitization.RuleSets.BuiltIn.SelectMany(r =>
            r.Limits.SelectMany(l => (string[])[l.Citation.Title, l.Citation.Locator]).Append(r.Title).Append(r.Edition)
        );
        var lacking = said.Where(HasWord).Where(t => !keys.Contains("cited." + Slug(t))).Distinct(StringComparer.Ordinal);
        Findings.None(lacking);

        // Three small letters in a row are a word.
        static bool HasWord(string text) =>
            Enumerable.Range(0, Math.Max(0, text.Length - 2)).Any(i => text.Skip(i).Take(3).All(char.IsAsciiLetterLower));

        static string Slug(string text) =>
            string.Join(
                '-',
                string.Concat(text.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' '))
                    .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            );
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public void Every_zone_and_limit_has_its_words(string language)
    {
        var words = Words.For(language);
        Assert.All(
            Report.Passes,
            p =>
            {
                var svg = SvgWriter.Write(ProofChart.Draw(Report, p, ChartSize.Phone, words, UnitDisplay.AsRead));
                Assert.DoesNotContain("[", svg, StringComparison.Ordinal);
                Assert.Contains(words["zone.final-rinse"], svg, StringComparison.Ordinal);
            }
        );
        Golden.Matches(
            $"tests/Rinsewright.Files.Tests/Sheets/Golden/demo-pass-{language}.svg",
            SvgWriter.Write(ProofChart.Draw(Report, Report.Passes[2], ChartSize.Desk, words, UnitDisplay.AsRead), standalone: true)
        );
        Golden.Matches(
            $"tests/Rinsewright.Files.Tests/Sheets/Golden/demo-overview-{language}.svg",
            SvgWriter.Write(ProofChart.Overview(Report, Report.Channels[0], ChartSize.Desk, words, UnitDisplay.AsRead), standalone: true)
        );
    }

    private static ProofReport Prove() =>
        Prove(
            new ReadingDto(
                "finalRinseManifold",
                new AmountDto(184, "[degF]"),
                "probe",
                new InstrumentDto("Probe no. 4", new AmountDto(1, "[degF]{diff}"))
            ),
            new ReadingDto("finalRinseLine", new AmountDto(19, "[psi]"), "machineGauge")
        );

    private static ProofReport Prove(params ReadingDto[] readings)
    {
        var request = new ProofRequest(
            Instrument: new InstrumentDto("Plate logger 7", new AmountDto(0.9, "[degF]{diff}"), new DateOnly(2026, 6, 2)),
            Readings: readings
        );
        using var file = new MemoryStream(DemoLoggers.Bytes(DemoLoggers.LarkspurTwoTank));
        // Everything is in memory: the run ends before it first waits.
        return ProofRun.RunAsync(request, file, DemoLoggers.LarkspurTwoTank, null, CancellationToken.None).GetAwaiter().GetResult();
    }
}
