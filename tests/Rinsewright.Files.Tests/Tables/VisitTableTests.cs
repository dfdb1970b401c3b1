using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Machines;
using Rinsewright.Files.Tables;
using Xunit;

namespace Rinsewright.Files.Tests.Tables;

/// <summary>Visits as tables: an invented visit, each column against what was entered, and nothing a spreadsheet would take for a formula.</summary>
public sealed class VisitTableTests
{
    private static readonly Guid Id = new("01a30000-0000-7000-8000-000000000001");
    private static readonly DateTimeOffset Began = new(2026, 11, 26, 9, 40, 0, TimeSpan.FromHours(-7));
    private const string Place = "01a30000-0000-7000-8000-000000000001,\"Larkspur \"\"Lodge\"\", upper\",'=Banquet,2026-11-26,";

    private static readonly VisitDocument Visit = new(
        Id,
        VisitDocument.CurrentVersion,
        "Larkspur \"Lodge\", upper",
        VisitFile.MachineOf(TypicalMachines.Of(MachineKind.DoorHotWater)),
        Began
    )
    {
        Ended = Began.AddMinutes(65),
        Technician = "+L. Brandt",
        RuleSet = "fda-food-code",
        Complaint = "cloudy glasses\nsince Monday",
        Readings =
        [
            new(
                "rd-final-rinse-temp",
                new AmountDto(182.5, "[degF]"),
                "asFound",
                "load",
                "probe",
                "-Probe no. 4",
                null,
                Began.AddMinutes(5),
                null,
                25
            ),
            new("rd-rinse-pressure", null, "asLeft", NotReadBecause: "@gauge broken; none with me"),
            new(
                "rd-final-rinse-temp",
                new AmountDto(160, "[degF]"),
                "asLeft",
                "load",
                "irreversibleLabel",
                null,
                "160 labels",
                null,
                false
            ),
            new("rd-inlet-temp", new AmountDto(-2.25, "Cel"), "asFound"),
        ],
        Findings = [new("sym-film", true, "asFound", "white, wipes off"), new("chk-leak", false, "asLeft")],
        PartsUsed = [new("Long curtain", 2, "ordered", new DateOnly(2026, 12, 3)), new("=Gasket", 1, "fitted")],
    };

    [Fact]
    public void A_visit_has_one_row() =>
        Assert.Equal(
            [
                "visit,kitchen,machine,date,began,ended,technician,rule set,complaint,cause,cause known,standing,next visit",
                Place
                    + "2026-11-26T09:40:00-07:00,2026-11-26T10:45:00-07:00,'+L. Brandt,fda-food-code,\"cloudy glasses\nsince Monday\",,,watch,2026-12-03",
            ],
            Rows(Table.Visits)
        );

    [Fact]
    public void A_reading_has_one_row_in_the_unit_it_was_typed_in() =>
        Assert.Equal(
            [
                "visit,kitchen,machine,date,reading,moment,state,value,unit,label turned,method,instrument,strip or label,time,racks per hour,not read because",
                Place + "rd-final-rinse-temp,asFound,load,182.5,°F,,probe,'-Probe no. 4,,2026-11-26T09:45:00-07:00,25,",
                Place + "rd-rinse-pressure,asLeft,unknown,,,,probe,,,,,\"'@gauge broken; none with me\"",
                Place + "rd-final-rinse-temp,asLeft,load,160,°F,no,irreversibleLabel,,160 labels,,,",
                Place + "rd-inlet-temp,asFound,unknown,-2.25,°C,,probe,,,,,", // a number is no formula
            ],
            Rows(Table.Readings)
        );

    [Fact]
    public void A_finding_and_a_part_have_one_row_each()
    {
        Assert.Equal(
            [
                "visit,kitchen,machine,date,finding,found,moment,note",
                Place + "sym-film,yes,asFound,\"white, wipes off\"",
                Place + "chk-leak,no,asLeft,",
            ],
            Rows(Table.Findings)
        );
        Assert.Equal(
            [
                "visit,kitchen,machine,date,part,count,where,expected",
                Place + "Long curtain,2,ordered,2026-12-03",
                Place + "'=Gasket,1,fitted,",
            ],
            Rows(Table.Parts)
        );
    }

    [Fact]
    public void A_follow_up_has_one_row_done_or_not()
    {
        var table = new VisitTable();
        table.AddFollowUps(
            Document(
                Kinds.Kitchen,
                [
                    new(KitchenPaths.Name, "Tin Bell Diner"),
                    new("followUps.a.what", "Delime, then prove again"),
                    new("followUps.a.due", "2026-12-09"),
                    new("followUps.a.take", "@acid"),
                    new("followUps.b.what", "Call"),
                    new("followUps.b.done", FieldDocument.Yes),
                ]
            )
        );

        Assert.Equal(
            ["kitchen,what,due,take,done", "Tin Bell Diner,\"Delime, then prove again\",2026-12-09,'@acid,no", "Tin Bell Diner,Call,,,yes"],
            Rows(table.FollowUps)
        );
    }

    [Fact] // nothing entered is lost: what cannot be read is counted and has its row
    public void A_visit_that_cannot_be_read_is_counted_and_stands_there()
    {
        var table = new VisitTable();
        table.Add(Document(Kinds.Visit, [new(VisitPaths.MachineName, "Banquet"), new("record.readings", "later than this")]));

        Assert.Equal(1, table.Unread);
        Assert.Equal($"{Id},,Banquet,,,,,,,,,,", Rows(table.Visits)[1]);
        Assert.Single(Rows(table.Readings));
    }

    private static VisitTable Table
    {
        get
        {
            var table = new VisitTable();
            table.Add(
                Document(
                    Kinds.Visit,
                    [
                        new(VisitPaths.MachineName, "=Banquet"),
                        new(VisitPaths.Standing, "watch"),
                        new(VisitPaths.Next, "2026-12-03"),
                        .. VisitFields.Of(Visit),
                    ]
                )
            );
            Assert.Equal(0, table.Unread);
            return table;
        }
    }

    private static FieldDocument Document(string kind, IReadOnlyList<KeyValuePair<string, string>> fields)
    {
        var empty = FieldDocument.Empty(Id, kind);
        return empty.With(empty.Write(Guid.CreateVersion7(), fields, "L. Brandt", "device", Began)!);
    }

    private static string[] Rows(string table)
    {
        Assert.StartsWith("\ufeff", table, StringComparison.Ordinal);
        Assert.EndsWith("\r\n", table, StringComparison.Ordinal);
        return table[1..^2].Split("\r\n");
    }
}
