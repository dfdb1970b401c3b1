using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>Saved proofs of the invented service, for sheets.</summary>
internal static class InventedDocument
{
    public static ProofDocument Of(ProofReport report) =>
        new(
            Guid.Parse("019a9f00-0000-7000-8000-00000000000a"),
            ProofDocument.CurrentVersion,
            "Larkspur Lodge",
            "Two-tank rack conveyor, banquet kitchen",
            "R. Okafor, Tamarack Valley Warewashing",
            new DateTimeOffset(2026, 11, 20, 14, 5, 0, TimeSpan.FromHours(-7)),
            new ProofRequest(),
            report,
            [new FileReference("9f2c51a7d0e84b36c1f7aa90be4d2358716e0c9b5d3f48a2e6b7c0d1f29384a5", "tray-7.csv", 40960)],
            "Booster thermostat checked before the passes; final-rinse jets cleaned."
        );
}
