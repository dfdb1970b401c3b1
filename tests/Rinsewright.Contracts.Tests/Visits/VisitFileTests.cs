using System.Text.Json.Nodes;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Contracts.Tests.Visits;

/// <summary>The visit file: what it gives back, what earlier versions still say, and what it says of files that cannot be.</summary>
public sealed class VisitFileTests
{
    private const string VersionOne = "tests/Rinsewright.Contracts.Tests/Visits/visit.1.json";
    private const string Signed = "tests/Rinsewright.Contracts.Tests/Visits/visit-signed.1.json";

    public static TheoryData<string> Examples() => [.. Tree.Files("docs/visits", ".json"), VersionOne, Signed];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Visit_comes_back_whole(string path)
    {
        var document = VisitFile.Read(Tree.Read(path));
        var visit = document.ToVisit(BuiltInKnowledge.Trade);
        var again = visit.ToDocument(document.Id, document.Kitchen, document.RuleSet ?? "fda-food-code");
        var text = VisitFile.Write(again);

        Assert.Equal(text, VisitFile.Write(VisitFile.Read(text)));
        Assert.Equal(Members(Tree.Read(path)), Members(text));
    }

    // Written by the first version. It never changes: what a device kept then is read for ever.
    [Fact]
    public void A_visit_of_version_1_says_what_it_said()
    {
        var document = VisitFile.Read(Tree.Read(VersionOne));
        var visit = document.ToVisit(BuiltInKnowledge.Trade);

        Assert.Equal((1, "Tin Bell Diner", "R. Okafor"), (document.Version, document.Kitchen, visit.Technician));
        Assert.Equal(new DateTimeOffset(2026, 11, 24, 9, 5, 0, TimeSpan.FromHours(-7)), visit.Began);
        Assert.Equal(15, visit.Readings.Count);
        var strip = visit.Readings[4];
        Assert.Equal(
            ("rd-sanitizer", new Amount(100, Units.MilligramPerLitre), VisitMoment.AsLeft, OperatingState.Load, "chlorine strips"),
            (strip.Kind, strip.Value!.Value, strip.Moment, strip.State, strip.Supply!)
        );
        Assert.Equal(
            ("C26-118", new DateOnly(2027, 4, 30)),
            (visit.TestSupplies["chlorine strips"].Lot!, visit.TestSupplies["chlorine strips"].Expires!.Value)
        );
        Assert.Equal("test kit empty, one is ordered", visit.Readings[^1].NotReadBecause);
        Assert.Equal(new VisitCause("sanitizer-airbound", CauseKnown.Confirmed, CauseOwner.Crew), visit.Cause);
    }

    // Written by the first version, signed by name and by finger. It never changes.
    [Fact]
    public void A_signed_visit_of_version_1_is_still_signed()
    {
        var document = VisitFile.Read(Tree.Read(Signed));
        var visit = document.ToVisit(BuiltInKnowledge.Trade);

        Assert.Equal(new DateTimeOffset(2026, 11, 25, 15, 10, 0, TimeSpan.FromHours(-7)), visit.Ended);
        Assert.Equal(
            [
                new VisitSignature(SignedFor.Technician, "R. Okafor", new(2026, 11, 25, 15, 8, 0, TimeSpan.FromHours(-7))),
                new VisitSignature(
                    SignedFor.Kitchen,
                    "Ana Whitlock",
                    new(2026, 11, 25, 15, 10, 0, TimeSpan.FromHours(-7)),
                    null,
                    "10,80 14,60 20,75;40,40 41,90 60,88"
                ),
            ],
            visit.Signatures
        );
        var change = Assert.Single(visit.Changes);
        Assert.Equal((ChangeKind.Set, new Amount(50, Units.MilligramPerLitre)), (change.Kind, change.After!.Value));
        Assert.Equal(("timing", "The kitchen needed the machine."), document.Declined is [var d] ? (d.Area, d.Because) : default);
    }

    // Kept before the difference of two pH had a unit of its own; a pH typed in its place is told, with where it stands.
    [Fact]
    public void A_rise_of_pH_kept_as_a_pH_is_a_rise()
    {
        VisitDocument Kept(double value) =>
            Changed(d =>
                d["readings"]![1] = JsonNode.Parse(
                    $$"""{ "kind": "rd-carryover-ph", "value": { "value": {{value.ToString(System.Globalization.CultureInfo.InvariantCulture)}}, "unit": "[pH]" }, "moment": "asFound" }"""
                )
            );

        Assert.Equal(new Amount(0.4, Units.PHDifference), Kept(0.4).ToVisit(BuiltInKnowledge.Trade).Readings[1].Value);
        var refused = Assert.Throws<ContractException>(() => Kept(8.3).ToVisit(BuiltInKnowledge.Trade));
        Assert.Contains("readings[1].value", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Units_travel_as_they_were_typed()
    {
        var visit = Changed(d => d["readings"]![1]!["value"] = JsonNode.Parse("""{ "value": 52.5, "unit": "Cel" }"""))
            .ToVisit(BuiltInKnowledge.Trade);

        Assert.Equal(new Amount(52.5, Units.Celsius), visit.Readings[1].Value);
        Assert.Equal("Cel", visit.ToDocument(Guid.NewGuid(), "", "fda-food-code").Readings![1].Value!.Unit);
    }

    [Fact]
    public void What_a_later_version_adds_is_passed_over_but_a_later_version_is_refused()
    {
        Assert.Equal("Tin Bell Diner", Changed(d => d["moonlight"] = 3).Kitchen);
        var refused = Assert.Throws<ContractException>(() => Changed(d => d["version"] = 2));
        Assert.Equal("version", refused.Field);
    }

    [Theory]
    [InlineData("readings[1].kind", "rd-moonlight", "no reading")]
    [InlineData("readings[1].moment", "sometime", "asFound, between, asLeft")]
    [InlineData("readings[1].state", "asleep", "unknown, idle, load, heatUp")]
    [InlineData("readings[1].instrument", "probe 77", "instruments")]
    [InlineData("readings[0].supply", "paper", "testSupplies")]
    [InlineData("readings[1].racksPerHour", -3, "no racks")]
    [InlineData("findings[0].id", "chk-moonlight", "no symptom")]
    [InlineData("parts[0].part", "wheel", "no part")]
    [InlineData("parts[0].fault", "moonlight", "not a fault")]
    [InlineData("parts[0].state", "tired", "notLookedAt, sound, worn, broken, missing")]
    [InlineData("changes[0].what", " ", "what was changed")]
    [InlineData("supplies[0].daysLeft", -1, "0 or more")]
    [InlineData("training[0].topic", "tt-moonlight", "not a topic")]
    [InlineData("upkeep[0].interval", "iv-moonlight", "not an interval")]
    [InlineData("signatures[0].name", "", "who signs")]
    [InlineData("cause.owner", "moon", "building, chemicals, machine, crew")]
    [InlineData("photos[0].sha256", "ABC", "hex")]
    [InlineData("ruleSet", "moon", "fda-food-code")]
    public void What_cannot_be_is_told_with_its_field_and_what_is_allowed(string field, object value, string says)
    {
        var problem = Assert.Throws<ContractException>(() =>
        {
            var document = Changed(d => Set(d, field, JsonValue.Create(value)));
            _ = document.ToVisit(BuiltInKnowledge.Trade);
            _ = document.Rules();
        });
        Assert.Equal(field, problem.Field);
        Assert.Contains(says, problem.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "value": 900, "unit": "[degF]" }""", "readings[1].value")]
    [InlineData("""{ "value": 20, "unit": "[psi]" }""", "readings[1].value")]
    [InlineData("""{ "value": 20, "unit": "moons" }""", "readings[1].value")]
    public void A_figure_that_cannot_be_is_refused(string value, string field) =>
        Assert.Equal(
            field,
            Assert
                .Throws<ContractException>(() =>
                    Changed(d => d["readings"]![1]!["value"] = JsonNode.Parse(value)).ToVisit(BuiltInKnowledge.Trade)
                )
                .Field
        );

    [Fact]
    public void A_machine_that_cannot_be_is_told_with_its_place()
    {
        var problem = Assert.Throws<ContractException>(() =>
            Changed(d => d["machine"]!["kind"] = "toaster").ToVisit(BuiltInKnowledge.Trade)
        );
        Assert.StartsWith("machine", problem.Field, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("""{ "version": 1 }""")]
    [InlineData("""{ "version": "one" }""")]
    public void What_is_no_visit_is_told(string text) => Assert.Throws<ContractException>(() => VisitFile.Read(text));

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public void Every_word_of_a_visit_is_there(string language)
    {
        var words = Words.For(language);
        var enums = (
            (Type[])
                [
                    typeof(VisitMoment),
                    typeof(OperatingState),
                    typeof(PartState),
                    typeof(ChangeKind),
                    typeof(PartWhere),
                    typeof(CauseKnown),
                    typeof(CauseOwner),
                    typeof(SignedFor),
                    typeof(AcceptanceArea),
                    typeof(AcceptanceStanding),
                    typeof(VisitStanding),
                    typeof(BandStanding),
                ]
        )
            .SelectMany(t => Enum.GetValues(t).Cast<Enum>())
            .Select(Wire.WordKey)
            .Concat(Enum.GetValues<VisitStanding>().Select(s => "visit.sentence." + Wire.WordKey(s)["visit-standing.".Length..]))
            .Concat(VisitReadingKinds.Own.Select(o => "visit.kind." + o));

        Assert.All(enums, k => Assert.False(words[k].StartsWith('['), k));
    }

    private static VisitDocument Changed(Action<JsonObject> change)
    {
        var json = JsonNode.Parse(Tree.Read(VersionOne))!.AsObject();
        change(json);
        return VisitFile.Read(json.ToJsonString());
    }

    // "readings[1].kind" → that member.
    private static void Set(JsonObject root, string path, JsonNode? value)
    {
        var steps = path.Split('.');
        JsonNode at = root;
        foreach (var step in steps[..^1])
        {
            at = step.EndsWith(']')
                ? at[step[..step.IndexOf('[', StringComparison.Ordinal)]]![
                    int.Parse(step[(step.IndexOf('[', StringComparison.Ordinal) + 1)..^1])
                ]!
                : at[step]!;
        }

        at[steps[^1]] = value;
    }

    // Every member with its text, without the machine, which has its own tests, and without what is the same as nothing.
    private static IEnumerable<string> Members(string json)
    {
        var node = JsonNode.Parse(json)!.AsObject();
        node.Remove("machine");
        node.Remove("ruleSet");
        List<string> found = [];
        Walk(node, "");
        return found.Order(StringComparer.Ordinal);

        void Walk(JsonNode? n, string path)
        {
            switch (n)
            {
                case JsonObject o:
                    foreach (var (name, value) in o)
                    {
                        Walk(value, $"{path}.{name}");
                    }

                    break;
                case JsonArray a:
                    for (var i = 0; i < a.Count; i++)
                    {
                        Walk(a[i], $"{path}[{i}]");
                    }

                    break;
                case JsonValue v when !Usual(path, v.ToString()):
                    found.Add($"{path} {v}");
                    break;
            }
        }

        static bool Usual(string path, string text) =>
            text is "false"
                && (
                    path.EndsWith(".changed", StringComparison.Ordinal)
                    || path.EndsWith(".primed", StringComparison.Ordinal)
                    || path.EndsWith(".shown", StringComparison.Ordinal)
                )
            || (
                path.EndsWith(".moment", StringComparison.Ordinal)
                && path.StartsWith(".parts", StringComparison.Ordinal)
                && text == "asFound"
            )
            || (path.EndsWith(".method", StringComparison.Ordinal) && text == "probe")
            || (path.EndsWith(".state", StringComparison.Ordinal) && text == "unknown");
    }
}
