using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Drawing;
using Rinsewright.Files.Sheets;
using Rinsewright.Files.Tests.Drawing;
using Xunit;

namespace Rinsewright.Files.Tests.Sheets;

public sealed class ProofSheetTests
{
    [Theory]
    [InlineData(Paper.A4, "en")]
    [InlineData(Paper.A4, "es")]
    [InlineData(Paper.Letter, "en")]
    [InlineData(Paper.Letter, "es")]
    public void Dump(Paper paper, string language)
    {
        var five = InventedProof.Report([0.5, 0.1, 0, -0.4, 0.2], "notProven", [InventedProof.RinseReading(), InventedProof.NotRead("washTank", InventedProof.WashLimit), InventedProof.NotRead("finalRinseLine", InventedProof.PressureLimit)], new MarkDto("gap", 120, 165, 45, 160, "no rows"));
        var forty = InventedProof.Report([.. Enumerable.Range(0, 40).Select(i => 0.01 * i)], "proven");
        var pdf = ProofSheet.Make(InventedDocument.Of(five), new SheetOptions(paper, language));
        Assert.NotEmpty(pdf);
        if (Environment.GetEnvironmentVariable("DUMP") is { } dir)
        {
            File.WriteAllBytes(Path.Combine(dir, $"five-{paper}-{language}.pdf"), pdf);
            File.WriteAllBytes(Path.Combine(dir, $"forty-{paper}-{language}.pdf"), ProofSheet.Make(InventedDocument.Of(forty), new SheetOptions(paper, language, UnitDisplay.Si)));
            File.WriteAllBytes(Path.Combine(dir, $"again-{paper}-{language}.pdf"), ProofSheet.Make(InventedDocument.Of(five), new SheetOptions(paper, language)));
        }
    }
}
