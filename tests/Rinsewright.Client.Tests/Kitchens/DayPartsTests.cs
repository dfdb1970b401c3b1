using Rinsewright.Client.Kitchens;
using Rinsewright.Client.Records;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Xunit;

namespace Rinsewright.Client.Tests.Kitchens;

/// <summary>Parts owed as the day lists them: of each machine of the kitchen by itself, from the lines of its visits.</summary>
public sealed class DayPartsTests
{
    private static readonly DateTimeOffset Monday = new(2026, 11, 2, 9, 0, 0, TimeSpan.FromHours(-7));
    private static readonly Guid Kitchen = Guid.Parse("01a20000-0000-7000-8000-000000000010");
    private static readonly Guid Door = Guid.Parse("01a20000-0000-7000-8000-000000000011");
    private static readonly Guid Conveyor = Guid.Parse("01a20000-0000-7000-8000-000000000012");

    [Theory]
    [InlineData(
        "en",
        "2 × Curtain: Conveyor, Larkspur Lodge; ordered on 2 Nov 2026, expected 20 Nov 2026",
        "1 × Valve: Door, Larkspur Lodge; ordered on 3 Nov 2026"
    )]
    [InlineData(
        "es",
        "2 × Curtain: Conveyor, Larkspur Lodge; pedido el 2 nov 2026, se espera el 20 nov 2026",
        "1 × Valve: Door, Larkspur Lodge; pedido el 3 nov 2026"
    )]
    public void Each_part_is_named_with_its_machine_and_its_order(string language, string curtain, string valve)
    {
        RecordLine[] lines =
        [
            // The door's curtain was fitted; the conveyor's is another. Lines come in no order.
            Line(Door, "Door", 9, """[{"what":"curtain","count":1,"where":"fitted"}]"""),
            Line(Conveyor, "Conveyor", 0, """[{"what":"Curtain","count":2,"where":"ordered","expected":"2026-11-20"}]"""),
            Line(Door, "Door", 1, """[{"what":"Curtain","count":1,"where":"ordered"},{"what":"Valve","count":1,"where":"ordered"}]"""),
            Line(Conveyor, "Conveyor", 3, """[{"what":"Curtain","count":1,"where":"from a later program"}]"""),
        ];

        var take = DayParts
            .Of(lines, "Larkspur Lodge", new DateOnly(2026, 11, 28), Words.For(language))
            .Select(t => $"{t.What}: {t.Where}".Replace('\u00a0', ' '));

        Assert.Equal([curtain, valve], take.Order(StringComparer.Ordinal).Reverse());
    }

    private static RecordLine Line(Guid machine, string name, int day, string parts)
    {
        var document = FieldDocument
            .Empty(Guid.CreateVersion7(), Kinds.Visit)
            .Write(
                Guid.CreateVersion7(),
                [
                    new(VisitPaths.Kitchen, $"{Kitchen}"),
                    new(VisitPaths.Machine, $"{machine}"),
                    new(VisitPaths.MachineName, name),
                    new(VisitPaths.Began, Monday.AddDays(day).ToString("O")),
                    new("record.partsUsed", parts),
                ],
                "L. Brandt",
                "device",
                Monday.AddDays(day)
            )!;
        var line = RecordLine.Of(FieldDocument.Empty(document.DocumentId, Kinds.Visit).With(document));
        Assert.Equal((Kitchen, parts), (line.PartsOf, line.Parts));
        return line;
    }
}
