using PdfSharp.Pdf;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Files.Sheets;
using Rinsewright.Knowledge;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>The machine history of the demo machines, read back out of the file.</summary>
public sealed class HistorySheetTests
{
    private static readonly Lazy<Dictionary<string, HistoryPaper>> Papers = new(() =>
        Tree.Files("docs/visits/history", ".json")
            .Select(f =>
                (Name: Path.GetFileName(f).Split('-')[0], Paper: VisitPaper.Of(VisitFile.Read(Tree.Read(f)), BuiltInKnowledge.Trade))
            )
            .GroupBy(v => v.Name, v => v.Paper)
            .ToDictionary(
                g => g.Key,
                g => new HistoryPaper(
                    MachineHistory.Of(
                        g.Select(v => new HistoryVisit(v.Document.Id.ToString(), v.Visit, v.Result)),
                        BuiltInKnowledge.Trade,
                        new DateOnly(2026, 11, 26)
                    ),
                    g.First().Visit.Machine.Name!,
                    g.First().Document.Kitchen
                ),
                StringComparer.Ordinal
            )
    );

    public static TheoryData<string, Paper, string> Sheets()
    {
        var data = new TheoryData<string, Paper, string>();
        foreach (var machine in (string[])["larkspur", "millrace"])
        {
            foreach (var paper in Enum.GetValues<Paper>())
            {
                data.Add(machine, paper, "en");
                data.Add(machine, paper, "es");
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void One_page_says_it_all_and_the_trends_stand_behind_it(string machine, Paper paper, string language)
    {
        using var pdf = PdfText.Open(HistorySheet.Print(Papers.Value[machine], new SheetOptions(paper, language)));
        var first = Flat(pdf.Pages[0]);
        string[] asked =
            language == "es"
                ?
                [
                    "Historial de la máquina",
                    "Última visita",
                    "Abierto",
                    "Pendiente",
                    "Deriva",
                    "Cambios desde la visita anterior",
                    "Página 1 de",
                ]
                : ["Machine history", "Last visit", "Open", "Owed", "Drifts", "Changed since the visit before", "Page 1 of"];
        Assert.All(asked, a => Assert.Contains(a, first, StringComparison.Ordinal));
        var behind = language == "es" ? "Cada lectura en breve" : "Every reading in short";
        Assert.DoesNotContain(behind, first, StringComparison.Ordinal);
        Assert.Contains(behind, Flat(pdf.Pages[1]), StringComparison.Ordinal);
        Assert.InRange(pdf.PageCount, 3, 8);
        var all = string.Join(' ', pdf.Pages.OfType<PdfPage>().Select(Flat));
        Assert.DoesNotContain(all, t => t == '[' || t == '{');
        var catalog = pdf.Internals.Catalog.Elements;
        Assert.Equal(language == "es" ? "es-US" : "en-US", catalog.GetString("/Lang"));
        Assert.True(catalog.GetDictionary("/MarkInfo")!.Elements.GetBoolean("/Marked"));
        Assert.All(pdf.Pages.OfType<PdfPage>(), page => Assert.True(PdfText.FontsEmbedded(page)));
    }

    [Fact] // docs/visits/history: element delimed on 2026-09-14, the test of 2026-11-16 declined, the curtain in from 2026-06-08 to 2026-11-16
    public void It_says_what_the_visits_say()
    {
        var larkspur = Text("larkspur");
        Assert.Contains("Acceptance test not run: leaks (the banquet began)", larkspur, StringComparison.Ordinal);
        Assert.Contains("19 Aug 2026: Strainer before the rinse valve cleaned, new screen.", larkspur, StringComparison.Ordinal);
        Assert.Contains("8 Jun 2026 16 Nov 2026 161", larkspur, StringComparison.Ordinal);
        Assert.Contains("14 Sep 2026: Wash tank and element delimed.", Text("millrace"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_history_gives_the_same_bytes()
    {
        var options = new SheetOptions(Paper.Letter, "en");
        Assert.Equal(HistorySheet.Print(Papers.Value["millrace"], options), HistorySheet.Print(Papers.Value["millrace"], options));
    }

    [Fact]
    public void A_history_without_visits_says_so()
    {
        var empty = new HistoryPaper(MachineHistory.Of([], BuiltInKnowledge.Trade, new DateOnly(2026, 11, 26)), "Door machine", "");
        using var pdf = PdfText.Open(HistorySheet.Print(empty, new SheetOptions()));
        Assert.Contains("No visit yet", Flat(pdf.Pages[0]), StringComparison.Ordinal);
    }

    private static string Text(string machine)
    {
        using var pdf = PdfText.Open(HistorySheet.Print(Papers.Value[machine], new SheetOptions()));
        return string.Join(' ', pdf.Pages.OfType<PdfPage>().Select(Flat));
    }

    private static string Flat(PdfPage page) => PdfText.Of(page).Replace('\n', ' ').Replace('\u00a0', ' ');
}
