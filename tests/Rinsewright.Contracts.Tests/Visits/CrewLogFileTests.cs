using System.Text.Json.Nodes;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Contracts.Tests.Visits;

/// <summary>A crew's log in the visit file: what it gives back, how it travels, and what is said of one that cannot be.</summary>
public sealed class CrewLogFileTests
{
    private const string Log = """
        {
          "kind": "rd-wash-temp", "unit": "Cel", "until": "2026-11-23", "days": 7, "shiftsPerDay": 2, "state": "idle", "whole": true,
          "entries": [{ "on": "2026-11-22", "shift": 1, "value": 66.5, "actionWritten": false }, { "on": "2026-11-23", "shift": 2, "value": 71 }],
          "closed": ["2026-11-21"],
          "unread": [{ "on": "2026-11-22", "shift": 2, "text": "6?" }]
        }
        """;

    [Fact]
    public void It_comes_back_as_it_was_copied()
    {
        var log = Visit(Log).ToVisit(BuiltInKnowledge.Trade).CrewLogs.Single();

        Assert.Equal(
            ("rd-wash-temp", Units.Celsius, new DateOnly(2026, 11, 23), 7, 2, OperatingState.Idle, true),
            (log.Kind, log.Unit, log.Until, log.Days, log.ShiftsPerDay, log.State, log.Whole)
        );
        Assert.Equal([new CrewEntry(new(2026, 11, 22), 1, 66.5, false), new CrewEntry(new(2026, 11, 23), 2, 71)], log.Entries);
        Assert.Equal([new DateOnly(2026, 11, 21)], log.Closed);
        Assert.Equal([new UnreadEntry(new(2026, 11, 22), 2, "6?")], log.Unread);
        Assert.Equal(new DateOnly(2026, 11, 17), log.From);
    }

    [Fact]
    public void What_is_not_said_is_usual_or_unknown()
    {
        var log = Visit("""{ "kind": "rd-wash-temp", "unit": "[degF]", "until": "2026-11-23" }""")
            .ToVisit(BuiltInKnowledge.Trade)
            .CrewLogs.Single();

        Assert.Equal((14, 1, OperatingState.Unknown, false), (log.Days, log.ShiftsPerDay, log.State, log.Whole));
        Assert.False(log.LookedThrough);
    }

    [Fact]
    public void It_is_a_field_of_the_document_that_is_sent()
    {
        var visit = Visit(Log);
        var document = FieldDocument
            .Empty(visit.Id, Kinds.Visit)
            .With(
                FieldDocument
                    .Empty(visit.Id, Kinds.Visit)
                    .Write(Guid.NewGuid(), VisitFields.Of(visit), "Ines Calloway", "phone", visit.Began)!
            );

        Assert.Equal(VisitFile.Write(visit), VisitFile.Write(VisitFields.Read(document)));
        var changed = VisitFields.Changed(visit with { CrewLogs = null }, visit);
        Assert.Equal([new("record.crewLogs", "")], changed);
    }

    [Theory]
    [InlineData("kind", "\"rd-moonlight\"", "crewLogs[0].kind")]
    [InlineData("unit", "\"[psi]\"", "crewLogs[0].unit")]
    [InlineData("unit", "\"moons\"", "crewLogs[0].unit")]
    [InlineData("days", "0", "crewLogs[0].days")]
    [InlineData("days", "400", "crewLogs[0].days")]
    [InlineData("shiftsPerDay", "9", "crewLogs[0].shiftsPerDay")]
    [InlineData("state", "\"asleep\"", "crewLogs[0].state")]
    [InlineData("until", "null", "crewLogs")]
    [InlineData("entries", """[{ "on": "2026-11-22", "shift": 0, "value": 66 }]""", "crewLogs[0].entries[0].shift")]
    [InlineData("entries", """[{ "on": "2026-11-22", "shift": 1, "value": 900 }]""", "crewLogs[0].entries[0].value")]
    [InlineData("entries", """[{ "shift": 1, "value": 66 }]""", "crewLogs[0].entries[0].on")]
    [InlineData(
        "entries",
        """[{ "on": "2026-11-22", "shift": 1, "value": 66 }, { "on": "2026-11-22", "shift": 1, "value": 67 }]""",
        "crewLogs[0].entries"
    )]
    [InlineData("unread", """[{ "on": "2026-11-22", "shift": 1, "text": "7O" }]""", "crewLogs[0].entries")]
    [InlineData("unread", """[{ "on": "2026-11-22", "shift": 2, "text": " " }]""", "crewLogs[0].unread[0].text")]
    [InlineData("unread", """[{ "shift": 2, "text": "7O" }]""", "crewLogs[0].unread[0].on")]
    public void What_cannot_be_is_told_with_its_place(string member, string value, string field)
    {
        var log = JsonNode.Parse(Log)!;
        log[member] = JsonNode.Parse(value);

        var problem = Assert.Throws<ContractException>(() => Visit(log.ToJsonString()).ToVisit(BuiltInKnowledge.Trade));
        Assert.StartsWith(field, problem.Field, StringComparison.Ordinal);
    }

    private static VisitDocument Visit(string log)
    {
        var json = JsonNode.Parse(Tree.Read("tests/Rinsewright.Contracts.Tests/Visits/visit.1.json"))!.AsObject();
        json["crewLogs"] = new JsonArray(JsonNode.Parse(log));
        return VisitFile.Read(json.ToJsonString());
    }
}
