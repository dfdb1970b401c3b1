using PdfSharp.Pdf;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing;
using Rinsewright.Engine.Visits;
using Rinsewright.Files.Sheets;
using Rinsewright.Knowledge;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>The papers of the demo visits, read back out of the file.</summary>
public sealed class VisitSheetTests
{
    private static readonly Lazy<Dictionary<string, VisitPaper>> Papers = new(() =>
        Tree.Files("docs/visits", ".json")
            .ToDictionary(
                f => Path.GetFileNameWithoutExtension(f),
                f => VisitPaper.Of(VisitFile.Read(Tree.Read(f)), BuiltInKnowledge.Trade),
                StringComparer.Ordinal
            )
    );

    public static TheoryData<string, Paper, string> Sheets()
    {
        var data = new TheoryData<string, Paper, string>();
        foreach (var visit in Tree.Files("docs/visits", ".json").Select(f => Path.GetFileNameWithoutExtension(f)))
        {
            foreach (var paper in Enum.GetValues<Paper>())
            {
                data.Add(visit, paper, "en");
                data.Add(visit, paper, "es");
            }
        }

        return data;
    }

    // The manager reads one page: verdict, three lines, what was read, what is open, next visit, signatures.
    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_first_page_is_whole_and_the_detail_begins_behind_it(string visit, Paper paper, string language)
    {
        using var pdf = PdfText.Open(VisitSheet.Report(Papers.Value[visit], new SheetOptions(paper, language)));
        var first = Flat(pdf.Pages[0]);
        string[] asked =
            language == "es"
                ? ["Informe de visita", "Qué era", "Qué se hizo", "Qué hace usted", "Próxima visita", "Firmas", "Página 1 de"]
                : ["Visit report", "What it was", "What was done", "What you do", "Next visit", "Signatures", "Page 1 of"];
        Assert.All(asked, a => Assert.Contains(a, first, StringComparison.Ordinal));
        var detail = language == "es" ? "Todas las lecturas" : "Every reading";
        Assert.DoesNotContain(detail, first, StringComparison.Ordinal);
        Assert.Contains(detail, Flat(pdf.Pages[1]), StringComparison.Ordinal);
        Assert.InRange(pdf.PageCount, 2, 5);
        Assert.DoesNotContain(All(pdf), t => t == '[' || t == '{');
    }

    [Fact] // with lines to sign on as well, a full first page ran over to a second that held nothing else
    public void Whoever_has_signed_gets_no_line_to_sign_on()
    {
        var paper = Papers.Value.Values.First(p => p.Visit.Signatures.Count == 2);
        var unsigned = paper with { Visit = paper.Visit with { Signatures = [] } };
        var technician = paper with
        {
            Visit = paper.Visit with { Signatures = [.. paper.Visit.Signatures.Where(s => s.For == SignedFor.Technician)] },
        };

        Assert.Equal(0, Lines(paper));
        Assert.Equal(1, Lines(technician));
        Assert.Equal(2, Lines(unsigned));

        static int Lines(VisitPaper paper)
        {
            using var pdf = PdfText.Open(VisitSheet.Report(paper, new SheetOptions(Paper.Letter, "en")));
            using var inspector = PdfText.Open(VisitSheet.Inspector(paper, new SheetOptions(Paper.Letter, "en")));
            var lines = Flat(pdf.Pages[0]).Split("name and signature").Length - 1;
            Assert.Equal(lines, Flat(inspector.Pages[0]).Split("name and signature").Length - 1);
            Assert.All(paper.Visit.Signatures, s => Assert.Contains(s.Name, Flat(inspector.Pages[0]), StringComparison.Ordinal));
            return lines;
        }
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_inspectors_page_is_one_page_tagged_in_its_language(string visit, Paper paper, string language)
    {
        using var pdf = PdfText.Open(VisitSheet.Inspector(Papers.Value[visit], new SheetOptions(paper, language)));
        Assert.Equal(1, pdf.PageCount);
        var catalog = pdf.Internals.Catalog.Elements;
        Assert.Equal(language == "es" ? "es-US" : "en-US", catalog.GetString("/Lang"));
        Assert.True(catalog.GetDictionary("/MarkInfo")!.Elements.GetBoolean("/Marked"));
        Assert.All(pdf.Pages.OfType<PdfPage>(), page => Assert.True(PdfText.FontsEmbedded(page)));
        Assert.DoesNotContain(All(pdf), t => t == '[' || t == '{');
    }

    // 03/04 is March here and April there, and 2026-11-25 is nobody's way of writing a day.
    [Theory]
    [InlineData("en", "25 Nov 2026")]
    [InlineData("es", "25 nov 2026")]
    public void Days_are_written_as_the_language_writes_them(string language, string day)
    {
        var (visit, options) = (Papers.Value["quarry-street-wrong-limit"], new SheetOptions(Paper.Letter, language));
        foreach (var sheet in (byte[][])[VisitSheet.Report(visit, options), VisitSheet.Inspector(visit, options)])
        {
            using var pdf = PdfText.Open(sheet);
            var text = All(pdf);
            Assert.Contains(day, text, StringComparison.Ordinal);
            Assert.DoesNotMatch("[0-9]{4}-[0-9]{2}-[0-9]{2}", text);
        }
    }

    [Fact]
    public void The_inspectors_page_has_before_after_instrument_place_time_and_the_rule()
    {
        using var pdf = PdfText.Open(VisitSheet.Inspector(Papers.Value["quarry-street-wrong-limit"], new SheetOptions(Paper.Letter, "en")));
        var text = Flat(pdf.Pages[0]);
        string[] asked =
        [
            "As found",
            "As left",
            "152 °F",
            "165 °F",
            "Probe no. 4 ±1 °F",
            "13:40",
            "25 Nov 2026",
            "160 °F label, turned, 3 times",
            "160 labels (L26-40)",
            "at least 160 °F. Data plate",
            "FDA Food Code 4-703.11(B)",
            "out of range",
            "Quarry Street School",
        ];
        Assert.All(asked, a => Assert.Contains(a, text, StringComparison.Ordinal));
    }

    // A stop is said to whoever stands before the machine: both languages on one tag, with what makes it safe again.
    [Theory]
    [InlineData(Paper.A4, "en")]
    [InlineData(Paper.A4, "es")]
    [InlineData(Paper.Letter, "en")]
    [InlineData(Paper.Letter, "es")]
    public void The_tag_says_stop_in_both_languages_and_who_makes_it_safe(Paper paper, string language)
    {
        using var pdf = PdfText.Open(VisitSheet.Tag(Papers.Value["saint-odile-wet-wiring"], new SheetOptions(paper, language))!);
        Assert.Equal(1, pdf.PageCount);
        var text = Flat(pdf.Pages[0]);
        string[] asked =
        [
            "STOP. Do not use this",
            "ALTO. No use esta",
            "licensed electrician",
            "electricista",
            "Locked out and proved dead before a cover comes off",
            "Saint Odile Hospital",
        ];
        Assert.All(asked, a => Assert.Contains(a, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Where_nothing_stops_the_machine_there_is_no_tag() =>
        Assert.Null(VisitSheet.Tag(Papers.Value["larkspur-routine"], new SheetOptions(Paper.A4, "en")));

    [Fact]
    public void What_was_not_read_stands_as_not_read_and_never_as_in_range()
    {
        var model = VisitSheet.ReportModel(Papers.Value["saltbox-not-proved"], new SheetOptions(Paper.A4, "en"));
        var rows = model.Blocks.OfType<SheetTable>().Single(t => t.Summary == "Every reading").Rows;
        var unread = rows.Where(r => r[2].Text == "not read").ToList();

        Assert.NotEmpty(unread);
        Assert.All(unread, r => Assert.Equal((StatusShape.Ring, "not read"), (r[0].Shape!.Value, r[0].Text)));
        Assert.Equal("Not proved today", model.Blocks.OfType<SheetVerdict>().Single().Word);
        Assert.Contains(
            model.Blocks.OfType<SheetList>().SelectMany(l => l.Items),
            i => i.Contains("no label in the van", StringComparison.Ordinal)
        );
    }

    // A stop with another proof in range is never shown to the inspector as proven.
    [Fact]
    public void A_stopped_machine_is_not_shown_as_proven()
    {
        var document = Papers.Value["larkspur-routine"].Document;
        var stopped = document with { Findings = [new VisitFindingDto("chk-door-switch-bypassed", true, "asFound")] };
        var verdict = VisitSheet
            .InspectorModel(VisitPaper.Of(stopped, BuiltInKnowledge.Trade), new SheetOptions(Paper.A4, "en"))
            .Blocks.OfType<SheetVerdict>()
            .Single();

        Assert.Equal((StatusShape.Square, "Stop use"), (verdict.Shape, verdict.Word));
    }

    // A photograph taken, one that is damaged, one that another device has.
    [Fact]
    public void Photographs_at_hand_are_printed_and_the_others_counted()
    {
        var at = new DateTimeOffset(2026, 11, 26, 9, 40, 0, TimeSpan.FromHours(-7));
        var (taken, damaged, elsewhere) = (new string('a', 64), new string('b', 64), new string('c', 64));
        var document = Papers.Value["larkspur-routine"].Document with
        {
            Photos =
            [
                new VisitPhotoDto(taken, "asFound", At: at),
                new VisitPhotoDto(damaged, "asLeft", At: at.AddHours(1)),
                new VisitPhotoDto(elsewhere, "asLeft"),
            ],
        };
        var paper = VisitPaper.Of(document, BuiltInKnowledge.Trade) with
        {
            Photos = new Dictionary<string, byte[]>
            {
                [taken] = File.ReadAllBytes(Path.Combine(Tree.Root, "docs", "handbook", "images", "proof-phone.png")),
                [damaged] = [0xFF, 0xD8, 0xFF, 1, 2, 3],
            },
        };
        using var pdf = PdfText.Open(VisitSheet.Report(paper, new SheetOptions(Paper.Letter, "en")));
        var text = All(pdf);
        Assert.Contains("As found, 26 Nov 2026 09:40", text, StringComparison.Ordinal);
        Assert.Contains("As left, 26 Nov 2026 10:40", text, StringComparison.Ordinal);
        Assert.Contains("not printed here: 1", Flat(pdf.Pages[^1]), StringComparison.Ordinal);
        Assert.Equal(1, pdf.Pages.Cast<PdfPage>().Sum(Images));

        static int Images(PdfPage page) =>
            page.Elements.GetDictionary("/Resources")?.Elements.GetDictionary("/XObject") is { } objects
                ? objects.Elements.Keys.Count(k => objects.Elements.GetDictionary(k)?.Elements.GetName("/Subtype") == "/Image")
                : 0;
    }

    // 152 °F is 66.7 °C, 165 °F 73.9 °C, 20 psi 138 kPa, by the definitions of the units.
    [Fact]
    public void One_system_of_units_is_shown_throughout()
    {
        using var pdf = PdfText.Open(
            VisitSheet.Report(Papers.Value["quarry-street-wrong-limit"], new SheetOptions(Paper.A4, "en", UnitDisplay.Si))
        );
        var text = All(pdf);
        Assert.All((string[])["66.7 °C", "73.9 °C", "138 kPa"], a => Assert.Contains(a, text, StringComparison.Ordinal));
        Assert.DoesNotContain("°F", text, StringComparison.Ordinal);
        Assert.DoesNotContain("psi", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_visit_gives_the_same_bytes()
    {
        var options = new SheetOptions(Paper.Letter, "es");
        Assert.Equal(
            VisitSheet.Report(Papers.Value["larkspur-routine"], options),
            VisitSheet.Report(Papers.Value["larkspur-routine"], options)
        );
    }

    private static string All(PdfDocument pdf) => string.Concat(pdf.Pages.OfType<PdfPage>().Select(Flat));

    private static string Flat(PdfPage page) => PdfText.Of(page).Replace('\n', ' ');
}
