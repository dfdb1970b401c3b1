using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Json.Schema;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Contracts.Tests;

/// <summary>The schemas in the handbook are those of the program; whatever the program writes fits them, and what it refuses by form does not.</summary>
public sealed class ContractSchemasTests
{
    private const string VersionOne = "tests/Rinsewright.Contracts.Tests/Visits/visit.1.json";
    private const string Signed = "tests/Rinsewright.Contracts.Tests/Visits/visit-signed.1.json";

    public static TheoryData<string> Names() => [.. ContractSchemas.All.Keys];

    public static TheoryData<string> Visits() => [.. Tree.Files("docs/visits", ".json"), VersionOne, Signed];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_schema_in_the_handbook_is_the_one_of_the_program(string name) =>
        Golden.Matches($"docs/schemas/{name}.schema.json", ContractSchemas.All[name]);

    [Theory]
    [MemberData(nameof(Visits))]
    public void Every_demo_visit_fits_as_written_and_as_the_program_writes_it(string path)
    {
        Assert.True(Fits("rinsewright.visit.1", Tree.Read(path)), path);
        Assert.True(Fits("rinsewright.visit.1", VisitFile.Write(VisitFile.Read(Tree.Read(path)))), path);
    }

    [Theory]
    [MemberData(nameof(Visits))]
    public void A_visit_as_document_and_operation_fits(string path)
    {
        var visit = VisitFile.Read(Tree.Read(path));
        var operation = FieldDocument
            .Empty(visit.Id, Kinds.Visit)
            .Write(new Guid("01993b00-ffff-7000-8000-7a6d617261c1"), VisitFields.Of(visit), "Ines Calloway", "phone", visit.Began)!;
        Assert.True(Fits("rinsewright.operation.1", JsonSerializer.Serialize(operation, ContractsJson.Default.Operation)));
        var document = FieldDocument.Empty(visit.Id, Kinds.Visit).With(operation);
        Assert.True(Fits("rinsewright.fields.1", JsonSerializer.Serialize(document, ContractsJson.Default.FieldDocument)));
    }

    [Theory] // The wrong visits of VisitFileTests that are wrong by form
    [InlineData("readings.1.kind", "\"rd-moonlight\"")]
    [InlineData("readings.1.moment", "\"sometime\"")]
    [InlineData("readings.1.state", "\"asleep\"")]
    [InlineData("readings.1.racksPerHour", "-3")]
    [InlineData("readings.1.value", "\"52 F\"")]
    [InlineData("parts.0.state", "\"tired\"")]
    [InlineData("changes.0.what", "\" \"")]
    [InlineData("supplies.0.daysLeft", "-1")]
    [InlineData("signatures.0.name", "\"\"")]
    [InlineData("cause.owner", "\"moon\"")]
    [InlineData("photos.0.sha256", "\"ABC\"")]
    [InlineData("version", "\"one\"")]
    [InlineData("version", "7")]
    [InlineData("machine", "\"toaster\"")]
    public void A_visit_that_is_wrong_by_form_does_not_fit(string path, string value)
    {
        var json = JsonNode.Parse(Tree.Read(VersionOne))!;
        var steps = path.Split('.');
        var at = json;
        foreach (var step in steps[..^1])
        {
            at = int.TryParse(step, out var i) ? at![i] : at![step];
        }

        at![steps[^1]] = JsonNode.Parse(value);
        Assert.False(Fits("rinsewright.visit.1", json.ToJsonString()));
    }

    [Fact]
    public void Fields_as_the_first_version_sent_them_fit_and_each_is_named()
    {
        var operations = FieldOperations();
        Assert.All(
            operations,
            o => Assert.True(Fits("rinsewright.operation.1", JsonSerializer.Serialize(o, ContractsJson.Default.Operation)))
        );
        foreach (var document in operations.GroupBy(o => (o.DocumentId, o.Kind)))
        {
            var joined = document.Aggregate(FieldDocument.Empty(document.Key.DocumentId, document.Key.Kind), (d, o) => d.With(o));
            Assert.True(Fits("rinsewright.fields.1", JsonSerializer.Serialize(joined, ContractsJson.Default.FieldDocument)));
            Assert.DoesNotContain(joined.Fields.Keys, path => !Named(document.Key.Kind, path));
        }

        Assert.Equal(Kinds.OfFields, operations.Select(o => o.Kind).Distinct());
    }

    [Theory]
    [InlineData(Kinds.Kitchen, typeof(KitchenPaths))]
    [InlineData(Kinds.Machine, typeof(MachinePaths))]
    [InlineData(Kinds.Visit, typeof(VisitPaths))]
    public void Every_path_the_program_knows_is_named(string kind, Type paths)
    {
        var all = paths.GetFields().Where(f => f.IsLiteral).Select(f => (string)f.GetRawConstantValue()!).ToList();
        Assert.True(all.Count > 6, $"{all.Count} paths");
        string[] below = ["", ".a1", ".a1.name", ".a1.gone"];
        Assert.DoesNotContain(all, p => !Begins(kind, p) && !below.Any(b => Named(kind, p + b)));
        Assert.False(Named(kind, "moon"));
        Assert.True(Named(kind, FieldDocument.DeletedPath));
    }

    [Theory]
    [InlineData(Kinds.Visit, VisitPaths.Standing, "fine", false)]
    [InlineData(Kinds.Visit, VisitPaths.Standing, "stopUse", true)]
    [InlineData(Kinds.Visit, VisitPaths.Standing, "", true)]
    [InlineData(Kinds.Machine, MachinePaths.Photograph, "ABC", false)]
    [InlineData(Kinds.Machine, MachinePaths.Photograph, "", true)] // removed
    [InlineData(Kinds.Kitchen, VisitPaths.Standing, "fine", true)] // of a later program
    [InlineData(Kinds.Kitchen, KitchenPaths.NextVisit, "in spring", true)] // kept as typed
    public void What_a_field_holds_goes_by_the_kind_of_document(string kind, string path, string value, bool fits)
    {
        var id = new Guid("01993b00-ffff-7000-8000-7a6d617261c1");
        var document = FieldDocument.Empty(id, kind);
        document = document.With(
            new Operation(id, kind, id, "Ines Calloway", "phone", DateTimeOffset.UnixEpoch, "set", null, [new FieldChange(path, value, 1)])
        );
        Assert.Equal(fits, Fits("rinsewright.fields.1", JsonSerializer.Serialize(document, ContractsJson.Default.FieldDocument)));
    }

    private static IReadOnlyList<Operation> FieldOperations() =>
        JsonSerializer.Deserialize(
            Tree.Read("tests/Rinsewright.Server.Tests/Records/Stored/field-operations.1.json"),
            ContractsJson.Default.IReadOnlyListOperation
        )!;

    private static bool Named(string kind, string path)
    {
        var fields = Fields(kind);
        return fields["properties"]![path] is not null
            || fields["patternProperties"] is JsonObject lists
                && lists.Any(p => Regex.IsMatch(path, p.Key, RegexOptions.None, TimeSpan.FromSeconds(1)));
    }

    private static bool Begins(string kind, string path) =>
        Fields(kind)["properties"]!.AsObject().Any(p => p.Key.StartsWith(path.TrimEnd('.') + ".", StringComparison.Ordinal));

    private static JsonNode Fields(string kind) =>
        JsonNode.Parse(ContractSchemas.All["rinsewright.fields.1"])!["allOf"]!
            .AsArray()
            .Single(a => a!["if"]!["properties"]!["kind"]!["const"]!.GetValue<string>() == kind)!["then"]!["properties"]!["fields"]!;

    [Theory]
    [InlineData("rinsewright.visit.1", "[]")]
    [InlineData("rinsewright.visit.1", "{}")]
    [InlineData("rinsewright.visit.1", """{ "version": 1 }""")]
    [InlineData("rinsewright.fields.1", """{ "id": "01993b00-ffff-7000-8000-7a6d617261c1", "kind": "moon", "version": 1, "fields": {} }""")]
    [InlineData("rinsewright.operation.1", """{ "action": "eat" }""")]
    [InlineData("rinsewright.proof.1", "{}")]
    public void What_is_something_else_does_not_fit(string name, string json) => Assert.False(Fits(name, json));

    private static bool Fits(string name, string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schemas.Value[name].Evaluate(document.RootElement).IsValid;
    }

    private static readonly Lazy<Dictionary<string, JsonSchema>> Schemas = new(() =>
        ContractSchemas.All.Keys.ToDictionary(
            n => n,
            n => JsonSchema.FromText(Tree.Read($"docs/schemas/{n}.schema.json")),
            StringComparer.Ordinal
        )
    );
}
