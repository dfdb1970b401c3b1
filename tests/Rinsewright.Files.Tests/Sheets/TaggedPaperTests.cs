using PdfSharp.Pdf;
using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing.History;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Files.Labels;
using Rinsewright.Files.Sheets;
using Rinsewright.Knowledge;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>The five papers of a visit, on both papers and in both languages, for whoever has them read aloud: each is tagged, says its language and is announced by its title, not by the name of a file.</summary>
public sealed class TaggedPaperTests
{
    private static readonly Dictionary<string, (string English, string Spanish)> Titles = new(StringComparer.Ordinal)
    {
        ["report"] = ("Visit report", "Informe de visita"),
        ["inspector"] = ("Inspector's page", "Hoja para el inspector"),
        ["tag"] = ("STOP. Do not use this machine", "ALTO. No use esta máquina"),
        ["label"] = ("Machine label", "Etiqueta de la máquina"),
        ["history"] = ("Machine history", "Historial de la máquina"),
    };

    private static readonly Lazy<VisitPaper> Stopped = new(() => Of("docs/visits/saint-odile-wet-wiring.json"));

    private static readonly Lazy<HistoryPaper> History = new(() =>
        new HistoryPaper(
            MachineHistory.Of(
                Tree.Files("docs/visits/history", ".json")
                    .Where(f => Path.GetFileName(f).StartsWith("millrace", StringComparison.Ordinal))
                    .Select(Of)
                    .Select(p => new HistoryVisit(p.Document.Id.ToString(), p.Visit, p.Result)),
                BuiltInKnowledge.Trade,
                new DateOnly(2026, 11, 26)
            ),
            "Pot machine",
            "Millrace Brewery"
        )
    );

    public static TheoryData<string, Paper, string> Papers()
    {
        var data = new TheoryData<string, Paper, string>();
        foreach (var which in Titles.Keys)
        {
            foreach (var paper in Enum.GetValues<Paper>())
            {
                data.Add(which, paper, "en");
                data.Add(which, paper, "es");
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void A_paper_is_tagged_in_its_language_under_its_title(string which, Paper paper, string language)
    {
        using var pdf = PdfText.Open(Print(which, new SheetOptions(paper, language)));
        var catalog = pdf.Internals.Catalog.Elements;

        Assert.Equal(language == "es" ? "es-US" : "en-US", catalog.GetString("/Lang"));
        Assert.True(catalog.GetDictionary("/MarkInfo")!.Elements.GetBoolean("/Marked"));
        Assert.Equal(language == "es" ? Titles[which].Spanish : Titles[which].English, pdf.Info.Title);
        Assert.True(catalog.GetDictionary("/ViewerPreferences")!.Elements.GetBoolean("/DisplayDocTitle"));
        // What is read aloud: heads, text, and lists or tables; and every page has some.
        var structure = ProofSheetTests.StructureOf(catalog.GetDictionary("/StructTreeRoot")!).ToList();
        var kinds = structure.Select(e => e.Elements.GetName("/S")).ToHashSet(StringComparer.Ordinal);
        Assert.All((string[])["/H2", "/P", which == "inspector" ? "/Table" : "/L"], kind => Assert.Contains(kind, kinds));
        Assert.All(pdf.Pages.OfType<PdfPage>(), page => Assert.True(page.Elements.ContainsKey("/StructParents")));
        Assert.All(pdf.Pages.OfType<PdfPage>(), page => Assert.True(PdfText.FontsEmbedded(page)));
    }

    // A4 is 210 mm by 297 mm (ISO 216), Letter 8.5 in by 11 in; 72 pt to the inch. Cut off at the foot a tag would not say who may take it down.
    [Theory]
    [InlineData(Paper.A4, "en", 595.28, 841.89)]
    [InlineData(Paper.A4, "es", 595.28, 841.89)]
    [InlineData(Paper.Letter, "en", 612, 792)]
    [InlineData(Paper.Letter, "es", 612, 792)]
    public void The_tag_is_one_whole_page_of_either_paper(Paper paper, string language, double width, double height)
    {
        using var pdf = PdfText.Open(Print("tag", new SheetOptions(paper, language)));

        Assert.Equal(1, pdf.PageCount);
        Assert.Equal(width, pdf.Pages[0].Width.Point, 0.01);
        Assert.Equal(height, pdf.Pages[0].Height.Point, 0.01);
        var text = PdfText.Of(pdf.Pages[0]).Replace('\n', ' ');
        string[] asked = ["STOP. Do not use this", "ALTO. No use esta", "licensed electrician", "electricista", "Saint Odile Hospital"];
        Assert.All(asked, a => Assert.Contains(a, text, StringComparison.Ordinal));
    }

    private static byte[] Print(string which, SheetOptions options) =>
        which switch
        {
            "report" => VisitSheet.Report(Stopped.Value, options),
            "inspector" => VisitSheet.Inspector(Stopped.Value, options),
            "tag" => VisitSheet.Tag(Stopped.Value, options)!,
            "label" => LabelSheet.Make(
                new Guid("01a21932-d2ec-7478-b8ba-70dc524172da"),
                TypicalMachines.Of(MachineKind.DoorHotWater) with
                {
                    Name = "Door 1",
                    Kitchen = "Larkspur Lodge",
                },
                "https://dish.example.org/",
                new DateTimeOffset(2026, 11, 26, 9, 0, 0, TimeSpan.FromHours(-7)),
                options
            ),
            _ => HistorySheet.Print(History.Value, options),
        };

    private static VisitPaper Of(string file) => VisitPaper.Of(VisitFile.Read(Tree.Read(file)), BuiltInKnowledge.Trade);
}
