using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Json.Schema;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Contracts.Tests.Machines;

/// <summary>The machine file: what it gives back, and what it says of files that cannot be.</summary>
public sealed class MachineFileTests
{
    private const string SchemaPath = "docs/schemas/rinsewright.machine.1.schema.json";

    public static TheoryData<MachineKind> Kinds() => new(Enum.GetValues<MachineKind>());

    public static TheoryData<string> Examples() => [.. Tree.Files("docs/examples", ".json")];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Typical_machine_comes_back_from_its_whole_file_and_from_an_empty_one(MachineKind kind)
    {
        var typical = TypicalMachines.Of(kind);
        var whole = MachineFile.Write(typical);

        Assert.Equal(whole, MachineFile.Write(Read(whole)));
        Assert.Equal(whole, MachineFile.Write(Read(MachineFile.Write(typical, whole: false))));
        Assert.Equal(whole, MachineFile.Write(Read($$"""{ "schema": "rinsewright.machine/1", "kind": "{{MachineFile.KindId(kind)}}" }""")));
        Assert.Equal(2, JsonNode.Parse(MachineFile.Write(typical, whole: false))!.AsObject().Count);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Example_comes_back_whole_and_short_and_fits_the_schema(string path)
    {
        var machine = Read(Tree.Read(path));
        var whole = MachineFile.Write(machine);
        var known = MachineFile.Write(machine, whole: false);

        Assert.Equal(whole, MachineFile.Write(Read(known)));
        Assert.Equal(whole, MachineFile.Write(Read(whole)));
        foreach (var text in (string[])[Tree.Read(path), whole, known])
        {
            Assert.True(Fits(text), $"{path} does not fit the schema");
        }
    }

    [Fact]
    public void Examples_are_the_six_demo_kitchens() =>
        Assert.Equal(
            ["Larkspur Lodge", "Millrace Brewery", "Quarry Street School", "Saint Odile Hospital", "Saltbox Oyster Bar", "Tin Bell Diner"],
            Tree.Files("docs/examples", ".json").Select(f => Read(Tree.Read(f)).Kitchen!).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Sums_kept_with_a_machine_come_back_whole_even_of_a_later_version()
    {
        var text = """
            {
              "schema": "rinsewright.machine/1", "kind": "door-hot-water",
              "setUps": [
                {
                  "tool": "titration", "on": "2026-11-20", "by": "L. Brandt", "choices": { "endPoint": "p" },
                  "given": { "drops": { "value": 8, "unit": "1" }, "sample": { "value": 25, "unit": "mL" } },
                  "found": { "product": { "value": 1.24, "unit": "g/L" } }
                },
                { "tool": "a-later-sum", "on": "2026-11-26", "by": "R. Okafor", "given": { "moonlight": { "value": 3, "unit": "1" } } }
              ]
            }
            """;
        var machine = Read(text);
        var again = Read(MachineFile.Write(machine, whole: false));

        Assert.True(Fits(text));
        Assert.True(Fits(MachineFile.Write(machine)));
        Assert.Equal(MachineFile.Write(machine), MachineFile.Write(again));
        Assert.Equal(["titration", "a-later-sum"], again.SetUps.Select(s => s.Tool));
        Assert.Equal(("L. Brandt", new DateOnly(2026, 11, 20)), (again.SetUps[0].By, again.SetUps[0].On));
        Assert.Equal(KeyValuePair.Create("sample", new Amount(25, Units.Millilitre)), again.SetUps[0].Given[1]);
        Assert.Equal("moonlight", Assert.Single(again.SetUps[1].Given).Key);
    }

    // Calibrated: what was measured keeps day, reading and uncertainty through the file.
    [Fact]
    public void A_calibrated_machine_comes_back()
    {
        var typical = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        var readings = new[]
        {
            new Engine.Machines.MachineReading("fillTime", new Amount(200, Units.Second), new DateOnly(2026, 11, 20)) { Part = "wash" },
            new Engine.Machines.MachineReading("supplyTemperature", new Amount(131, Units.Fahrenheit), new DateOnly(2026, 11, 20)),
        };
        var machine = MachineCalibration.From(typical, readings).Machine;
        var back = Read(MachineFile.Write(machine, whole: false));

        Assert.Equal(machine.Supply.Water, back.Supply.Water);
        Assert.Equal(machine.Tanks[0].Fill!.Flow, back.Tanks[0].Fill!.Flow);
        Assert.Equal(Provenance.Measured, back.Supply.Water.Basis);
        Assert.True(back.Supply.Water.Uncertainty > 0);
        Assert.True(Fits(MachineFile.Write(machine)));
    }

    [Fact]
    public void Schema_in_the_handbook_is_the_one_of_the_program() => Golden.Matches(SchemaPath, MachineFile.JsonSchema(Words.For("en")));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Any_figure_that_may_be_changed_comes_back(MachineKind kind)
    {
        var typical = TypicalMachines.Of(kind);
        var paths = MachineFile
            .Figures(typical)
            .Where(f => f.Written is not null && !f.Path.Contains('[', StringComparison.Ordinal))
            .ToList();
        Gen.Select(Gen.Int[0, paths.Count - 1], Gen.Int[-300, 300])
            .Sample(
                (index, thousandth) =>
                {
                    // Near the typical value, and in another unit of its kind: some of these contradict others, and are then refused.
                    var figure = paths[index];
                    var units = Units.Of(figure.Dimension);
                    var amount = new Amount(figure.Written!.Value.Value * (1 + (thousandth / 1000.0)), figure.Written.Value.Unit).In(
                        units[Math.Abs(thousandth) % units.Count]
                    );
                    var reading = MachineFile.Measured(typical, [(figure.Path, amount)], "bucket and clock", new DateOnly(2026, 11, 20));
                    if (reading.Machine is not { } machine)
                    {
                        return reading.Problems.Count > 0;
                    }

                    var whole = MachineFile.Write(machine);
                    var back = MachineFile.Figures(machine).Single(f => f.Path == figure.Path);
                    return back is { Basis: Provenance.Measured, Source: "bucket and clock" }
                        && back.Written == amount
                        && whole == MachineFile.Write(Read(whole))
                        && whole == MachineFile.Write(Read(MachineFile.Write(machine, whole: false)));
                },
                iter: 300
            );
    }

    [Theory]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "capacity": { "value": -3, "unit": "[gal_us]", "basis": "measured" } } } """,
        "tanks.wash.capacity",
        "not-more"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "to": { "value": 1, "unit": "mm", "basis": "measured" } } } """,
        "tanks.wash.to",
        "ends-before-start"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "zones": { "wash": { "to": { "value": 0.9, "unit": "m", "basis": "measured" } } } """,
        "zones.power-rinse.from",
        "overlaps"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "length": { "value": 1.628, "unit": "m", "basis": "dataPlate" } """,
        "tanks.rinse.to",
        "outside-machine"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "thermostat": { "setPoint": { "value": 230, "unit": "[degF]", "basis": "measured" } } } } """,
        "tanks.wash.thermostat.setPoint",
        "too-much"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "booster": { "thermostat": { "setPoint": { "value": 211, "unit": "[degF]", "basis": "measured" } } } """,
        "booster.thermostat.setPoint",
        "boils"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "rinse": { "pump": { "flow": { "value": 0, "unit": "L/min", "basis": "measured" } } } } """,
        "tanks.rinse.pump.flow",
        "not-more"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "fill": { "opens": { "value": 98, "unit": "%", "basis": "measured" } } } } """,
        "tanks.wash.fill.opens",
        "opens-after-closes"
    )]
    [InlineData("rack-conveyor-two-tank", """ "tanks": { "rinse": { "spillsTo": "sink" } } """, "tanks.rinse.spillsTo", "unknown-tank")]
    [InlineData("rack-conveyor-two-tank", """ "tanks": { "wash": { "spillsTo": "rinse" } } """, "tanks.wash.spillsTo", "spills-forward")]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "surface": { "value": 0.01, "unit": "m2", "basis": "measured" } } } """,
        "tanks.wash.capacity",
        "too-deep"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "capacity": { "value": 18, "unit": "[psi]", "basis": "measured" } } } """,
        "tanks.wash.capacity.unit",
        "unit-other"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "capacity": { "value": 18, "unit": "buckets", "basis": "measured" } } } """,
        "tanks.wash.capacity.unit",
        "unit-unknown"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "capacity": { "value": 18, "unit": "L" } } } """,
        "tanks.wash.capacity.basis",
        "basis-missing"
    )]
    [InlineData("rack-conveyor-two-tank", """ "tanks": { "wash": { "colour": 1 } } """, "tanks.wash.colour", "unknown-field")]
    [InlineData("rack-conveyor-two-tank", """ "tanks": { "prewash": {} } """, "tanks.prewash", "unknown-part")]
    [InlineData("rack-conveyor-two-tank", """ "tanks": { "wash": { "thermostat": null } } """, "tanks.wash", "heater-alone")]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "tanks": { "wash": { "heater": { "kind": "steamCoil", "rated": { "value": 9, "unit": "kW", "basis": "dataPlate" } } } } """,
        "tanks.wash.heater.rated",
        "heater-has-none"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "finalRinse": { "captured": { "value": 120, "unit": "%", "basis": "measured" } } """,
        "finalRinse.captured",
        "too-much"
    )]
    [InlineData(
        "rack-conveyor-two-tank",
        """ "supply": { "water": { "value": 130, "unit": "[degF]", "basis": "measured", "uncertainty": -2 } } """,
        "supply.water.uncertainty",
        "uncertainty-not-positive"
    )]
    [InlineData("rack-conveyor-two-tank", """ "cycle": {} """, "cycle", "not-of-kind")]
    [InlineData("door-hot-water", """ "conveyor": {} """, "conveyor", "not-of-kind")]
    [InlineData("door-hot-water", """ "sanitizing": "chlorine" """, "feeders", "sanitizer-needed")]
    [InlineData(
        "door-hot-water",
        """ "cycle": { "refill": { "value": 20, "unit": "s", "basis": "measured" } } """,
        "cycle.refill",
        "dump-has-none"
    )]
    [InlineData(
        "door-hot-water",
        """ "plate": { "pressureMinimum": { "value": 25, "unit": "[psi]" }, "pressureMaximum": { "value": 1, "unit": "bar" } } """,
        "plate.pressureMaximum",
        "range-reversed"
    )]
    [InlineData("door-hot-water", """ "ware": { "pieces": 2.5 } """, "ware.pieces", "not-whole")]
    [InlineData("door-hot-water", """ "ware": { "material": "wood" } """, "ware.material", "not-among")]
    [InlineData("door-hot-water", """ "setUps": {} """, "setUps", "not-a-list")]
    [InlineData("door-hot-water", """ "setUps": [3] """, "setUps[0]", "not-an-object")]
    [InlineData("door-hot-water", """ "setUps": [{ "tool": "titration", "on": "2026-11-26" }] """, "setUps[0].by", "missing")]
    [InlineData("door-hot-water", """ "setUps": [{ "tool": "titration", "on": "26 Nov", "by": "" }] """, "setUps[0].on", "not-a-day")]
    [InlineData(
        "door-hot-water",
        """ "setUps": [{ "tool": "titration", "on": "2026-11-26", "by": "", "given": { "drops": 8 } }] """,
        "setUps[0].given.drops",
        "not-a-figure"
    )]
    [InlineData(
        "door-hot-water",
        """ "setUps": [{ "tool": "titration", "on": "2026-11-26", "by": "", "mood": "good" }] """,
        "setUps[0].mood",
        "unknown-field"
    )]
    [InlineData("submarine", "", "kind", "not-among")]
    public void What_cannot_be_is_told_with_its_place(string kind, string body, string path, string key)
    {
        var json = $$"""{ "schema": "rinsewright.machine/1", "kind": "{{kind}}"{{(body.Length > 0 ? "," : "")}} {{body}} }""";
        var reading = MachineFile.Read(json);

        Assert.Null(reading.Machine);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal((path, "machine-file." + key), (problem.Path, problem.Says.Key));
        foreach (var language in Words.Languages)
        {
            var said = Words.For(language).Say(problem.Says);
            Assert.DoesNotMatch(@"\{\w+\}|\[machine-", said);
        }
    }

    [Fact]
    public void Every_problem_is_told_not_only_the_first()
    {
        var reading = MachineFile.Read(
            """
            {
              "schema": "rinsewright.machine/9", "kind": "door-hot-water", "colour": "red", "kitchen": "a", "kitchen": "b",
              "length": { "value": 0, "unit": "m", "basis": "measured" },
              "supply": { "humidity": { "value": 130, "unit": "%", "basis": "guessed" } }
            }
            """
        );
        Assert.Equal(["schema", "kitchen", "colour", "length", "supply.humidity.basis"], reading.Problems.Select(p => p.Path));
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("{\n  \"schema\": oops\n}", 2)]
    public void What_is_not_JSON_is_told_with_its_line(string json, double line)
    {
        var problem = Assert.Single(MachineFile.Read(json).Problems);
        Assert.Equal("machine-file.not-json", problem.Says.Key);
        Assert.Equal(line, problem.Says.Values.Single(v => v.Name == "line").Number);
    }

    [Fact]
    public void Any_damage_to_a_file_is_told_and_never_thrown()
    {
        var whole = MachineFile.Write(TypicalMachines.Of(MachineKind.RackConveyorThreeTank));
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Char["{}[]\",:0-9eE.-x"])
            .Sample(
                (at, mark) =>
                {
                    var reading = MachineFile.Read(whole[..at] + mark + whole[(at + 1)..]);
                    return (reading.Machine is null) == (reading.Problems.Count > 0);
                },
                iter: 500
            );
    }

    [Fact]
    public void Changes_of_a_what_if_are_read_as_people_type_them()
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);
        var reading = MachineFile.With(
            machine,
            [
                new("supply.water", "120 F"),
                new("ware.pieces", "18"),
                new("curtains.wash-rinse", "none"),
                new("tanks.wash.heater.rated", "15 kW"),
                new("ware.material", "glass"),
            ]
        );

        Assert.Empty(reading.Problems);
        Assert.Equal(120, reading.Machine!.Supply.Water.Value.InFahrenheit, 1e-9);
        Assert.Equal((18, "glass"), (reading.Machine.Ware.Pieces, reading.Machine.Ware.Material));
        Assert.DoesNotContain(reading.Machine.Curtains, c => c.Slot == "wash-rinse");
        Assert.Equal("supply.water", Assert.Single(MachineFile.With(machine, [new("supply.water", "120")]).Problems).Path);
        Assert.Equal("supply.wather", Assert.Single(MachineFile.With(machine, [new("supply.wather", "120 F")]).Problems).Path);
    }

    [Fact]
    public void Every_field_has_its_word_in_both_languages()
    {
        var keys = MachineShape.Machine.WordKeys().Distinct(StringComparer.Ordinal).ToList();
        Assert.InRange(keys.Count, 80, 200);
        foreach (var language in Words.Languages)
        {
            var known = Words.For(language).Keys.ToHashSet(StringComparer.Ordinal);
            Findings.None(keys.Where(k => !known.Contains(k)));
        }
    }

    [Fact]
    public void Schema_refuses_what_the_program_refuses_by_form()
    {
        Assert.False(Fits("""{ "kind": "flight" }"""));
        Assert.False(Fits("""{ "schema": "rinsewright.machine/1", "kind": "flight", "colour": 1 }"""));
        Assert.False(
            Fits(
                """{ "schema": "rinsewright.machine/1", "kind": "flight", "length": { "value": 1, "unit": "[psi]", "basis": "measured" } }"""
            )
        );
        Assert.False(
            Fits("""{ "schema": "rinsewright.machine/1", "kind": "flight", "length": { "value": 0, "unit": "m", "basis": "measured" } }""")
        );
    }

    private static Machine Read(string json)
    {
        var reading = MachineFile.Read(json);
        Findings.None(reading.Problems.Select(p => $"{p.Path}: {Words.For("en").Say(p.Says)}"));
        return reading.Machine!;
    }

    private static bool Fits(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Published.Value.Evaluate(document.RootElement).IsValid;
    }

    private static readonly Lazy<JsonSchema> Published = new(() => JsonSchema.FromText(Tree.Read(SchemaPath)));
}
