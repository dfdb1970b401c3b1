using System.Globalization;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Benchmarks.Records;

/// <summary>Invented visits as a device sends them: each one operation that writes its fields.</summary>
internal sealed class InventedVisits(int seed)
{
    /// <summary>Readings of each.</summary>
    public const int Readings = 40;

    private static readonly DateTimeOffset Morning = new(2026, 11, 20, 9, 30, 0, TimeSpan.FromHours(-7));
    private readonly Random random = new(seed);

    /// <summary>A visit that is on no device yet.</summary>
    public Operation Next() =>
        Write(
            Guid.CreateVersion7(),
            [
                new(VisitPaths.Kitchen, Guid.CreateVersion7().ToString()),
                new(VisitPaths.Machine, Guid.CreateVersion7().ToString()),
                new(VisitPaths.MachineName, "Two-tank rack conveyor"),
                new(VisitPaths.Began, Morning.ToString("O", CultureInfo.InvariantCulture)),
                new(VisitPaths.Standing, "sanitary"),
                new(VisitPaths.Next, "2027-02-18"),
                new(VisitPaths.Record + "version", "1"),
                new(VisitPaths.Record + "kitchen", "\"Larkspur Lodge\""),
                new(VisitPaths.Record + "began", $"\"{Morning:O}\""),
                new(VisitPaths.Record + "technician", "\"Ines Calloway\""),
                new(VisitPaths.Record + "readings", ReadingsOf()),
            ]
        );

    /// <summary>A change of a visit: its readings anew, as when one more is typed in.</summary>
    public Operation Change(Guid visit) => Write(visit, [new(VisitPaths.Record + "readings", ReadingsOf())]);

    private static Operation Write(Guid visit, IEnumerable<KeyValuePair<string, string>> fields) =>
        FieldDocument.Empty(visit, Kinds.Visit).Write(Guid.CreateVersion7(), fields, "Ines Calloway", "phone", DateTimeOffset.Now)!;

    private string ReadingsOf() =>
        "["
        + string.Join(
            ',',
            Enumerable
                .Range(0, Readings)
                .Select(i =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $$"""{"kind":"rd-invented-{{i}}","value":{"value":{{140 + (random.Next(500) / 10.0)}},"unit":"[degF]"},"moment":"asFound","state":"load","method":"probe"}"""
                    )
                )
        )
        + "]";
}
