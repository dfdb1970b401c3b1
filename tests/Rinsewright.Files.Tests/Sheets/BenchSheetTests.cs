using PdfSharp.Pdf;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;
using Rinsewright.Files.Sheets;
using Xunit;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>Sums on paper, read back from the finished file.</summary>
public sealed class BenchSheetTests
{
    private static readonly BenchSheetHead Head = new(
        Guid.Parse("0197f0e2-0000-7000-8000-000000000001"),
        new DateTimeOffset(2026, 11, 26, 9, 30, 0, TimeSpan.FromHours(-7)),
        "Tin Bell Diner",
        "Door machine, chlorine",
        "R. Okafor"
    );

    public static TheoryData<string, string> ToolsAndLanguages
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var tool in BenchTools.All)
            {
                all.Add(tool.Id, "en");
                all.Add(tool.Id, "es");
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(ToolsAndLanguages))]
    public void Every_tool_prints(string id, string language)
    {
        var tool = BenchTools.Find(id)!;
        var text = Text(BenchSheet.Make(tool, Filled(tool), Head, new SheetOptions(Paper.Letter, language, UnitDisplay.Us))!);

        Assert.DoesNotMatch(@"\[(bench|sheet|cli|client)\.|NaN|∞|\{\w{4,}\}", text);
        Assert.Contains("Tin Bell Diner", text, StringComparison.Ordinal);
        Assert.Contains("R. Okafor", text, StringComparison.Ordinal);
        Assert.Contains(language == "es" ? "26 nov 2026 09:30" : "26 Nov 2026 09:30", text, StringComparison.Ordinal);
    }

    // Doses by hand stand in the engine's tests: 123 mL of 5.25 % bleach and 212 mL of detergent for three sinks of 14.0 gal; 100 to 200 mg/L, 10 s, 55 and 110 °F [wi-atcp-75].
    [Theory]
    [InlineData("en", Paper.Letter, "100 mg/L to 200 mg/L", "55 °F (13 °C)", "for 10 s")]
    [InlineData("es", Paper.A4, "de 100 mg/L a 200 mg/L", "55 °F (13 °C)", "por 10 s")]
    public void The_card_over_the_sinks_says_what_to_do(string language, Paper paper, string strip, string warm, string time)
    {
        using var pdf = PdfText.Open(ByHand(language, paper, i => i));
        var text = Plain(pdf);

        Assert.Equal(1, pdf.PageCount);
        Assert.Contains("123 mL", text, StringComparison.Ordinal);
        Assert.Contains("212 mL", text, StringComparison.Ordinal);
        Assert.Contains(strip, text, StringComparison.Ordinal);
        Assert.Contains(warm, text, StringComparison.Ordinal);
        Assert.Contains(time, text, StringComparison.Ordinal);
        Assert.Contains("FDA Food Code 4-501.114(A)", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "must show at least 171 °F (77 °C)")]
    [InlineData("es", "debe mostrar mínimo 171 °F (77 °C)")]
    public void Hot_water_instead_has_its_own_card(string language, string says)
    {
        using var pdf = PdfText.Open(ByHand(language, Paper.Letter, i => i.And("sanitizer", "hot-water")));
        var text = Plain(pdf);

        Assert.Contains(says, text, StringComparison.Ordinal);
        Assert.DoesNotContain("mg/L", text, StringComparison.Ordinal);
    }

    [Fact] // 10 L at 62.5 mg/L from 54 g/L are 11.6 mL: 2.35 spoons of 4.93 mL, to the quarter 2¼
    public void Small_doses_are_told_in_spoons()
    {
        using var pdf = PdfText.Open(
            ByHand(
                "en",
                Paper.Letter,
                i =>
                    i.And("sinks", "volumes")
                        .And("washSink", new Amount(10, Units.Litre))
                        .And("rinseSink", new Amount(10, Units.Litre))
                        .And("sanitizingSink", new Amount(10, Units.Litre))
                        .And("solutionTemperature", new Amount(100, Units.Fahrenheit))
            )
        );

        Assert.Contains("11.6 mL (0.4 fl oz), about 2¼ teaspoons: bleach", Plain(pdf), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_sum_gives_the_same_bytes() => Assert.Equal(ByHand("es", Paper.A4, i => i), ByHand("es", Paper.A4, i => i));

    [Fact]
    public void Without_an_answer_there_is_no_sheet() =>
        Assert.Null(BenchSheet.Make(BenchTools.Find("builder")!, BenchInput.Empty, Head, new SheetOptions()));

    private static byte[] ByHand(string language, Paper paper, Func<BenchInput, BenchInput> change)
    {
        var tool = BenchTools.Find("by-hand")!;
        return BenchSheet.Make(
            tool,
            change(BenchInput.UsualOf(tool).And("label", new Amount(5.25, Units.Percent))),
            Head,
            new SheetOptions(paper, language)
        )!;
    }

    // What has no usual figure gets one in its range.
    private static BenchInput Filled(BenchTool tool)
    {
        var input = BenchInput.UsualOf(tool);
        foreach (var field in tool.Fields.Where(f => !f.Optional && f.Usual is null))
        {
            var value = field.Id switch
            {
                "reading" => 4610,
                "calciumHardness" => 250,
                "alkalinity" => 220,
                "mAlkalinity" => 12,
                _ => Math.Min(field.High, Math.Max(field.Low, 10)),
            };
            input = input.And(field.Id, new Amount(value, field.Unit));
        }

        return tool.Id == "delime" ? input.And("chlorineOff", "yes").And("drained", "yes").And("noChlorine", "yes") : input;
    }

    private static string Text(byte[] file)
    {
        using var pdf = PdfText.Open(file);
        return Plain(pdf);
    }

    // Lines of a cell are drawn one by one.
    private static string Plain(PdfDocument pdf) =>
        string.Concat(pdf.Pages.OfType<PdfPage>().Select(PdfText.Of)).Replace('\n', ' ').Replace('\u00a0', ' ');
}
