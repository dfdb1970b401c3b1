using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Drawing;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Drawing.Tests;

/// <summary>The drawings as they were looked at and accepted.</summary>
public sealed class ProofChartGoldenTests
{
    private static readonly Words English = Words.For("en");
    private static readonly Words Spanish = Words.For("es");

    public static TheoryData<string> Names => [.. Scenes.Keys];

    private static Dictionary<string, Func<Scene>> Scenes { get; } =
        new(StringComparer.Ordinal)
        {
            ["pass-phone.svg"] = () => Draw(InventedProof.Report(), ChartSize.Phone, English),
            ["pass-desk.svg"] = () => Draw(WithRinse(), ChartSize.Desk, English),
            ["pass-phone-rinse.svg"] = () => Draw(WithRinse(), ChartSize.Phone, English),
            ["pass-phone-es-si.svg"] = () => Draw(WithRinse(), ChartSize.Phone, Spanish, UnitDisplay.Si),
            ["pass-paper-es.svg"] = () => Draw(InventedProof.Report(), ChartSize.Paper, Spanish),
            ["pass-window.svg"] = () => Draw(InventedProof.Report(), ChartSize.Desk, English, UnitDisplay.AsRead, new ChartWindow(40, 52)),
            ["pass-low.svg"] = () => Draw(InventedProof.Report([-7, -6, -6], "notProven"), ChartSize.Phone, English),
            ["overview-desk.svg"] = () => Overview(ChartSize.Desk, 5),
            ["overview-phone.svg"] = () => Overview(ChartSize.Phone, 5),
            ["overview-forty.svg"] = () => Overview(ChartSize.Desk, 40),
        };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_drawing_stays_as_accepted(string name) =>
        Golden.Matches($"tests/Rinsewright.Drawing.Tests/Golden/{name}", SvgWriter.Write(Scenes[name](), standalone: true));

    private static ProofReport WithRinse() => InventedProof.Report([0.5, 0.1, 0, -0.4, 0.2], "notProven", [InventedProof.RinseReading()]);

    private static Scene Draw(
        ProofReport report,
        ChartSize size,
        Words words,
        UnitDisplay units = UnitDisplay.AsRead,
        ChartWindow? window = null
    ) => ProofChart.Draw(report, report.Passes[2], size, words, units, window);

    private static Scene Overview(ChartSize size, int passes)
    {
        var report = InventedProof.Report(
            [.. Enumerable.Range(0, passes).Select(n => n % 4 == 3 ? -4.0 : 0.2)],
            "notProven",
            [],
            new("gap", 120, 165, 45, 160, "no rows"),
            new("frozen", 420, 470, 50, 470, "stands still")
        );
        return ProofChart.Overview(report, report.Channels[0], size, Words.For("en"), UnitDisplay.AsRead, null, 3);
    }
}
