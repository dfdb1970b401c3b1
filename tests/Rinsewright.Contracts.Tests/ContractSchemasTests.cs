using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Contracts.Tests;

/// <summary>The schemas in the handbook are those of the program; whatever the program writes fits them, and what it refuses by form does not.</summary>
public sealed class ContractSchemasTests
{
    private const string VersionOne = "tests/Rinsewright.Contracts.Tests/Visits/visit.1.json";

    public static TheoryData<string> Names() => [.. ContractSchemas.All.Keys];

    public static TheoryData<string> Visits() => [.. Tree.Files("docs/visits", ".json"), VersionOne];

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
