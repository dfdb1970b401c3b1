using System.Globalization;
using System.Text.Json;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Cli.Tests.Machines;

/// <summary>Running machines and comparing changes from the command line.</summary>
public sealed class MachineRunTests
{
    // Issue: the ids a script may rely on.
    private static readonly string[] Promised =
    [
        "washTankTemperature",
        "rinseTankTemperature",
        "finalRinseTemperature",
        "finalRinsePressure",
        "rinseVolumePerRack",
        "fillTime",
        "heatUpTime",
        "idleWater",
        "idleTankPower",
        "washHeaterPower",
        "boosterPower",
        "washArmPressure",
        "platePeakTemperature",
        "plateHeatUnits",
        "floorWater",
        "drainWater",
    ];

    [Fact]
    public async Task Steady_run_gives_every_promised_observable_and_the_healthy_bands()
    {
        using var machine = await TwoTankAsync();
        using var json = await JsonAsync("run", machine.Path, "--racks-per-hour", "150", "--scenario", "steady", "--json");
        var root = json.RootElement;

        Assert.Equal("rinsewright.machine-run/1", root.GetProperty("schema").GetString());
        Assert.Equal("steady", root.GetProperty("scenario").GetString());
        Assert.Empty(root.GetProperty("faults").EnumerateArray());
        Assert.All(Promised, id => Assert.False(string.IsNullOrEmpty(Reading(root, id).GetProperty("unit").GetString())));
        // Common practice, no source: wash 150 to 160 degF (set point in the middle of its band), rinse tank 160 to 170, final rinse 180 to 190.
        Assert.InRange(Value(root, "washTankTemperature"), 150, 162);
        Assert.InRange(Value(root, "rinseTankTemperature"), 160, 170);
        Assert.InRange(Value(root, "finalRinseTemperature"), 180, 190);
        // R56: 0.888 gal for a lone rack at 20 psi; R49: 5.08 psi at the arm.
        Assert.Equal(0.888, Value(root, "rinseVolumePerRack"), 0.01);
        Assert.Equal(5.076, Value(root, "washArmPressure"), 0.01);
    }

    // The Machine screen computes the settled machine: one machine file gives one set of figures, wherever it is read.
    [Fact]
    public async Task A_steady_run_and_the_screen_say_the_same_of_every_example()
    {
        foreach (var path in Tree.Files("docs/examples", ".json").Select(f => Path.Combine(Tree.Root, f)))
        {
            using var json = await JsonAsync("run", path, "--json");
            var machine = Contracts
                .Machines.MachineFile.Read(await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken))
                .Machine!;
            var racks = json.RootElement.GetProperty("racksPerHour").GetDouble();
            var screen = Engine.Machines.SteadyState.Of(machine, racks).Observables.Where(o => o.Value is not null).ToList();
            Assert.InRange(screen.Count, 15, 60);
            Assert.All(screen, o => Assert.Equal(o.Value!.Value.Value, Value(json.RootElement, o.Observable.Id), 1e-9));
        }
    }

    [Fact]
    public async Task Torn_drain_seal_shows_when_idle_and_hides_under_load()
    {
        using var machine = await TwoTankAsync();
        using var sound = await JsonAsync("run", machine.Path, "--json");
        using var torn = await JsonAsync("run", machine.Path, "--fault", "drain-seal-torn", "--json");

        var fault = Assert.Single(torn.RootElement.GetProperty("faults").EnumerateArray());
        Assert.Equal(1, fault.GetProperty("severity").GetDouble());
        // Trade fact, no source: a torn seal loses tank water; 95 L/h from a full tank in the catalogue of faults. An idle tank stands between
        // 90 % of its volume, where the fill opens, and full: it loses no more than a full one, and no less than in proportion.
        Assert.InRange(Value(torn.RootElement, "idleWater") - Value(sound.RootElement, "idleWater"), 0.9 * 95, 95);
        Assert.Equal(Value(sound.RootElement, "finalRinseTemperature"), Value(torn.RootElement, "finalRinseTemperature"), 1.0);
    }

    [Fact]
    public async Task Series_is_a_table_with_a_row_each_ten_seconds()
    {
        using var machine = await TwoTankAsync();
        var answer = await Run.Async("machine", "run", machine.Path, "--scenario", "heat-up", "--csv");
        var rows = answer.Output.TrimEnd('\n').Split('\n').Select(l => l.Split(',')).ToList();

        Assert.Equal((0, ""), (answer.Status, answer.Error));
        Assert.Equal("seconds", rows[0][0]);
        Assert.Contains("washTankTemperature [degF]", rows[0]);
        Assert.All(rows, r => Assert.Equal(rows[0].Length, r.Length));
        Assert.InRange(rows.Count, 20, 60);
        var seconds = rows.Skip(1).Select(r => double.Parse(r[0], CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(seconds.Order(), seconds);
    }

    [Fact]
    public async Task Colder_supply_costs_booster_power_and_time()
    {
        using var machine = await TwoTankAsync();
        using var json = await JsonAsync("whatif", machine.Path, "--set", "supply.water=120 F", "--json");
        var root = json.RootElement;

        Assert.Equal("rinsewright.machine-whatif/1", root.GetProperty("schema").GetString());
        var shows = root.GetProperty("shows").EnumerateArray().Select(s => s.GetString()).ToList();
        // Catalogue of faults, incoming water 120 degF: booster +6.0 kW, heat-up +205 s, final rinse -1.1 degF.
        Assert.Contains("boosterPower", shows);
        Assert.Contains("heatUpTime", shows);
        Assert.DoesNotContain("washArmPressure", shows);
        Assert.Equal(6, Difference(root, "boosterPower"), 0.5);
        Assert.Equal(205, Difference(root, "heatUpTime"), 10.0);
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public async Task Text_fits_80_columns_and_says_what_it_does_not_claim(string language)
    {
        foreach (var path in Tree.Files("docs/examples", ".json").Select(f => Path.Combine(Tree.Root, f)))
        {
            string[][] commands =
            [
                ["machine", "run", path, "--language", language],
                ["machine", "whatif", path, "--set", "ware.pieces=4", "--scenario", "rush", "--language", language],
            ];
            foreach (var command in commands)
            {
                var answer = await Run.Async(command);
                Assert.Equal((0, ""), (answer.Status, answer.Error));
                Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
                Assert.DoesNotMatch(@"\[(observable|cli|read)|NaN|∞", answer.Output);
                Assert.Contains(
                    language == "en" ? "no measurement" : "no es una medición",
                    answer.Output.ReplaceLineEndings(" "),
                    StringComparison.Ordinal
                );
            }
        }
    }

    [Theory]
    [InlineData("--fault: no-such is not known. Use one of: drain-seal-missing", "--fault", "no-such")]
    [InlineData("Write a number from 0 to 1", "--fault", "drain-seal-torn:5")]
    [InlineData("is not a rate", "--racks-per-hour", "0")]
    [InlineData("--scenario: lunch is not known", "--scenario", "lunch")]
    [InlineData("Use --json or --csv, not both.", "--json", "--csv")]
    public async Task What_cannot_be_run_is_said(string message, params string[] args)
    {
        using var machine = await TwoTankAsync();
        var answer = await Run.Async(["machine", "run", machine.Path, .. args]);
        Assert.Equal((64, ""), (answer.Status, answer.Output));
        Assert.Contains(message, answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("There is nothing to change")]
    [InlineData("supply.water: “120” has no unit. Write one, for example 120 °F.", "--set", "supply.water=120")]
    [InlineData("supply.wat: There is no such field here.", "--set", "supply.wat=120 F")]
    [InlineData("tanks.wash.capacity: It must be more than", "--set", "tanks.wash.capacity=-1 gal")]
    [InlineData("is not a change", "--set", "supply.water")]
    public async Task What_cannot_be_changed_is_said(string message, params string[] args)
    {
        using var machine = await TwoTankAsync();
        var answer = await Run.Async(["machine", "whatif", machine.Path, .. args]);
        Assert.Equal((64, ""), (answer.Status, answer.Output));
        Assert.Contains(message, answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fault_of_a_part_the_machine_lacks_is_refused()
    {
        using var machine = Run.File("door.json", (await Run.Async("machine", "new", "--kind", "door-hot-water")).Output);
        var answer = await Run.Async("machine", "run", machine.Path, "--fault", "conveyor-too-fast");
        Assert.Equal(64, answer.Status);
        Assert.Contains("it lacks the part", answer.Error, StringComparison.Ordinal);
    }

    private static async Task<TemporaryFile> TwoTankAsync() =>
        Run.File("two-tank.json", (await Run.Async("machine", "new", "--kind", "rack-conveyor-two-tank")).Output);

    private static async Task<JsonDocument> JsonAsync(params string[] args)
    {
        var answer = await Run.Async(["machine", .. args]);
        Assert.Equal((0, ""), (answer.Status, answer.Error));
        return JsonDocument.Parse(answer.Output);
    }

    private static JsonElement Reading(JsonElement root, string id, string of = "observables") => root.GetProperty(of).GetProperty(id);

    private static double Value(JsonElement root, string id) => Reading(root, id).GetProperty("value").GetDouble();

    private static double Difference(JsonElement root, string id) =>
        Reading(root, id, "after").GetProperty("value").GetDouble() - Reading(root, id, "before").GetProperty("value").GetDouble();
}
