using PdfSharp.Pdf;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Drawing;
using Rinsewright.Drawing.Tests;
using Rinsewright.Files.Sheets;
using Xunit;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>The finished file, read back: page size, font, tags, language, text.</summary>
public sealed class ProofSheetTests
{
    public static TheoryData<Paper, string> PapersAndLanguages =>
        new()
        {
            { Paper.A4, "en" },
            { Paper.A4, "es" },
            { Paper.Letter, "en" },
            { Paper.Letter, "es" },
        };

    private static ProofReport FivePasses =>
        InventedProof.Report(
            [0.5, 0.1, 0, -0.4, 0.2],
            "notProven",
            [
                InventedProof.RinseReading(),
                InventedProof.NotRead("wash-tank-temperature", InventedProof.WashLimit),
                InventedProof.NotRead("final-rinse-line-gauge-pressure", InventedProof.PressureLimit),
            ],
            new MarkDto("gap", 120, 165, 45, 160, "no rows")
        );

    private static ProofReport FortyPasses => InventedProof.Report([.. Enumerable.Range(0, 40).Select(i => 0.01 * i)], "proven");

    // A4 is 210 mm by 297 mm (ISO 216), Letter 8.5 in by 11 in; 72 pt to the inch.
    [Theory]
    [InlineData(Paper.A4, 595.28, 841.89)]
    [InlineData(Paper.Letter, 612, 792)]
    public void Every_page_has_the_size_of_its_paper(Paper paper, double width, double height)
    {
        using var pdf = PdfText.Open(Make(FortyPasses, paper, "en"));
        Assert.All(
            pdf.Pages.OfType<PdfPage>(),
            page =>
            {
                Assert.Equal(width, page.Width.Point, 0.01);
                Assert.Equal(height, page.Height.Point, 0.01);
            }
        );
    }

    [Theory]
    [MemberData(nameof(PapersAndLanguages))]
    public void Five_passes_fit_on_two_pages(Paper paper, string language)
    {
        using var pdf = PdfText.Open(Make(FivePasses, paper, language));
        Assert.InRange(pdf.PageCount, 1, 2);
    }

    [Theory]
    [MemberData(nameof(PapersAndLanguages))]
    public void The_file_is_tagged_says_its_language_and_carries_its_font(Paper paper, string language)
    {
        using var pdf = PdfText.Open(Make(FivePasses, paper, language));
        var catalog = pdf.Internals.Catalog.Elements;
        Assert.Equal(language == "es" ? "es-US" : "en-US", catalog.GetString("/Lang"));
        Assert.True(catalog.GetDictionary("/MarkInfo")!.Elements.GetBoolean("/Marked"));
        Assert.NotNull(catalog.GetDictionary("/StructTreeRoot"));
        Assert.All(pdf.Pages.OfType<PdfPage>(), page => Assert.True(PdfText.FontsEmbedded(page)));
    }

    [Fact]
    public void The_structure_has_headings_a_figure_with_its_text_and_tables_of_rows()
    {
        using var pdf = PdfText.Open(Make(FivePasses, Paper.A4, "en"));
        var all = StructureOf(pdf.Internals.Catalog.Elements.GetDictionary("/StructTreeRoot")!).ToList();
        var kinds = all.Select(e => e.Elements.GetName("/S")).ToList();
        Assert.Single(kinds, "/H1");
        Assert.Equal(9, kinds.Count(k => k == "/H2"));
        Assert.Equal(3, kinds.Count(k => k == "/Table"));
        Assert.Contains("/L", kinds);
        var figure = Assert.Single(all, e => e.Elements.GetName("/S") == "/Figure");
        Assert.Contains("Heat dose", figure.Elements.GetString("/Alt"), StringComparison.Ordinal);
        // Six rows of facts; a head and five passes; a head, two proofs of the pass and three readings.
        Assert.Equal(6 + 6 + 6, kinds.Count(k => k == "/TR"));
    }

    [Theory]
    [MemberData(nameof(PapersAndLanguages))]
    public void Every_page_foot_says_machine_date_and_page_of_pages(Paper paper, string language)
    {
        using var pdf = PdfText.Open(Make(FortyPasses, paper, language));
        Assert.True(pdf.PageCount >= 3);
        for (var n = 0; n < pdf.PageCount; n++)
        {
            var text = PdfText.Of(pdf.Pages[n]);
            Assert.Contains("Two-tank rack conveyor, banquet kitchen, Larkspur Lodge\n", text, StringComparison.Ordinal);
            Assert.Contains(
                language == "es" ? "20 nov 2026 14:05 UTC−07:00\n" : "20 Nov 2026 14:05 UTC−07:00\n",
                text,
                StringComparison.Ordinal
            );
            Assert.Contains(
                language == "es" ? $"Página {n + 1} de {pdf.PageCount}\n" : $"Page {n + 1} of {pdf.PageCount}\n",
                text,
                StringComparison.Ordinal
            );
        }
    }

    [Theory]
    [InlineData("", "Larkspur Lodge", true)]
    [InlineData("", "", false)]
    public void A_name_that_is_missing_leaves_no_comma(string machine, string kitchen, bool named)
    {
        var document = InventedDocument.Of(FivePasses) with { Machine = machine, Kitchen = kitchen };
        using var pdf = PdfText.Open(ProofSheet.Make(document, new SheetOptions(Paper.A4, "en")));
        var lines = PdfText.Of(pdf.Pages[^1]).Split('\n').Select(l => l.Trim()).ToList();
        Assert.DoesNotContain(lines, l => l.StartsWith(','));
        Assert.Equal(named, lines.Contains("Larkspur Lodge"));
    }

    [Fact]
    public void Forty_passes_flow_on_and_none_is_lost()
    {
        var report = FortyPasses;
        using var pdf = PdfText.Open(Make(report, Paper.Letter, "en"));
        var text = string.Concat(pdf.Pages.OfType<PdfPage>().Select(PdfText.Of));
        var starts = report.Passes.Select(p => FormattableString.Invariant($"{p.Start:d MMM yyyy HH:mm:ss}\n")).ToList();
        Assert.All(starts, start => Assert.Equal(1, Count(text, start)));
        // The head stands on both pages of the table.
        Assert.Equal(2, Count(text, "Lowest to highest\n"));
    }

    [Theory]
    [MemberData(nameof(PapersAndLanguages))]
    public void The_text_has_what_an_inspector_asks_for(Paper paper, string language)
    {
        using var pdf = PdfText.Open(Make(FivePasses, paper, language));
        var text = string.Concat(pdf.Pages.OfType<PdfPage>().Select(PdfText.Of)).Replace('\n', ' ');
        string[] asked =
        [
            "Larkspur Lodge",
            "R. Okafor",
            "Plate logger no. 7",
            language == "es" ? "2 jun 2026" : "2 Jun 2026",
            "FDA Food Code 4-703.11(B)",
            "FDA Food Code 4-501.112(A)(2)",
            "Probe no. 4",
            "9f2c51a7d0e84b36c1f7aa90be4d2358716e0c9b5d3f48a2e6b7c0d1f29384a5",
            language == "es" ? "No comprobado" : "Not proven",
            language == "es" ? "sin leer" : "not read",
            language == "es" ? "177,2 °F" : "177.2 °F",
            language == "es" ? "práctica habitual, sin fuente" : "common practice, no source",
        ];
        Assert.All(asked, a => Assert.Contains(a, text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_proof_gives_the_same_bytes() => Assert.Equal(Make(FivePasses, Paper.A4, "es"), Make(FivePasses, Paper.A4, "es"));

    [Fact]
    public async Task Sheets_are_made_side_by_side()
    {
        var expected = Make(FivePasses, Paper.Letter, "en");
        var made = await Task.WhenAll(
            Enumerable.Range(0, 8).Select(_ => Task.Run(() => Make(FivePasses, Paper.Letter, "en"), TestContext.Current.CancellationToken))
        );
        Assert.All(made, m => Assert.Equal(expected, m));
    }

    private static byte[] Make(ProofReport report, Paper paper, string language) =>
        ProofSheet.Make(InventedDocument.Of(report), new SheetOptions(paper, language));

    private static int Count(string text, string what) => text.Split(what).Length - 1;

    internal static IEnumerable<PdfDictionary> StructureOf(PdfDictionary element)
    {
        var kids = element.Elements.GetValue("/K") switch
        {
            PdfArray array => array.Elements.Select(e => Followed(e)).ToList(),
            { } one => [Followed(one)],
            null => [],
        };
        foreach (var kid in kids.OfType<PdfDictionary>().Where(k => k.Elements.ContainsKey("/S")))
        {
            yield return kid;
            foreach (var below in StructureOf(kid))
            {
                yield return below;
            }
        }
    }

    private static PdfItem? Followed(PdfItem? item) => item is PdfSharp.Pdf.Advanced.PdfReference reference ? reference.Value : item;
}
