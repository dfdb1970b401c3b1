using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>
/// Every fault of the catalogue on both base machines, held against the tables of another program within 1 % or what gauges and eyes tell. What differs stands with its reason in
/// <c>sensitivity-explained.csv</c>, and only that.
/// </summary>
public sealed class SensitivityVerification
{
    private const double Share = 0.01;
    private static readonly Dictionary<string, string> Columns = Published
        .Rows("Machines", "sensitivity-columns.csv")
        .ToDictionary(r => r["column"], r => r["observable"], StringComparer.Ordinal);

    private static readonly Lazy<Dictionary<(string, string, string), Dictionary<string, string>>> Explained = new(() =>
        Published.Rows("Machines", "sensitivity-explained.csv").ToDictionary(r => (r["machine"], r["fault"], r["column"]))
    );

    private static readonly Dictionary<string, RunResult> Healthy = new(StringComparer.Ordinal)
    {
        ["two-tank"] = Run("two-tank", "healthy"),
        ["door"] = Run("door", "healthy"),
    };

    public static TheoryData<string, string> Faults
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var machine in new[] { "two-tank", "door" })
            {
                foreach (var row in Published.Rows("Machines", $"sensitivity-{machine}.csv"))
                {
                    data.Add(machine, row["fault"]);
                }
            }

            return data;
        }
    }

    [Theory] // also row R70: every ledger closes
    [MemberData(nameof(Faults))]
    public void A_fault_moves_what_the_tables_say(string machine, string fault)
    {
        var run = fault == "healthy" ? Healthy[machine] : Run(machine, fault);

        Assert.True(run.LedgerGap < 1e-9, $"Ledgers are open by {run.LedgerGap}.");
        Assert.Empty(Cells(machine, fault, run));
        Assert.Empty(Deltas(machine, fault, run));
    }

    [Fact]
    public void Nothing_is_explained_that_agrees() =>
        Assert.All(
            Explained.Value.Values,
            e =>
            {
                var machine = e["machine"];
                Assert.Contains(
                    Published.Rows("Machines", $"sensitivity-{machine}.csv"),
                    r => r[e["column"]] == e["printed"] && r["fault"] == e["fault"]
                );
                Assert.NotEmpty(e["reason"]);
                var ours = Run(machine, e["fault"]).Of(Columns[e["column"]])!.Value?.Value;
                Assert.Equal<double?>(e.OptionalNumber("ours"), ours is { } o ? Math.Round(o, 1) : null);
            }
        );

    [Fact] // the tables have the 35 observables of the catalogue
    public void Every_column_is_an_observable() => Assert.Equal(35, Columns.Values.Count(id => Observables.All.Any(o => o.Id == id)));

    private static IEnumerable<string> Cells(string machine, string fault, RunResult run)
    {
        var row = Published.Rows("Machines", $"sensitivity-{machine}.csv").Single(r => r["fault"] == fault);
        foreach (var (column, id) in Columns)
        {
            var read = run.Of(id);
            if (!Explained.Value.ContainsKey((machine, fault, column)) && !Agrees(row[column], read))
            {
                yield return $"{column}: printed {row[column]}, here {read?.Value} {read?.Absence}";
            }
        }
    }

    private static bool Agrees(string printed, Observed? read) =>
        printed switch
        {
            "never" => read is { Absence: Absence.Never },
            "n/a" => read?.Value is null,
            _ when read?.Value is { } value => Near(Number(printed), value.Value, read.Observable.Threshold),
            _ => false,
        };

    private static IEnumerable<string> Deltas(string machine, string fault, RunResult run)
    {
        var row = Published.Rows("Machines", $"delta-{machine}.csv").Single(r => r["fault"] == fault);
        foreach (var (column, id) in Columns)
        {
            var (was, now) = (Healthy[machine].Of(id), run.Of(id));
            if (Explained.Value.ContainsKey((machine, fault, column)) || row[column] is "n/a")
            {
                continue;
            }

            var agrees = row[column] switch
            {
                "never" => now is { Absence: Absence.Never },
                "none" => now is { Value: null },
                _ when (was?.Value, now?.Value) is ({ } a, { } b) => Near(Number(row[column]), b.Value - a.Value, now.Observable.Threshold),
                _ => false,
            };
            if (!agrees)
            {
                yield return $"{column}: printed difference {row[column]}, here {was?.Value} to {now?.Value}";
            }
        }
    }

    private static double Number(string printed) => double.Parse(printed, System.Globalization.CultureInfo.InvariantCulture);

    private static bool Near(double printed, double here, double threshold) =>
        Math.Abs(here - printed) <= Math.Max(Share * Math.Abs(printed), threshold);

    private static RunResult Run(string machine, string fault)
    {
        var twoTank = machine == "two-tank";
        var p = Halved(twoTank ? Typicals.TwoTank : Typicals.Door);
        return MachineRun.Run(
            p,
            Scenario.Steady(twoTank ? 150 : 3600.0 / 70),
            fault == "healthy" ? [] : [MachineFaults.Find(fault)!.At(1)],
            new RunOptions(0.5, 0, twoTank ? 231 : null)
        );
    }

    private static ModelParameters Halved(ModelParameters p)
    {
        static HeaterParameters Half(HeaterParameters h) => h with { Band = h.Band / 2 };
        return p.WithTanks(t => t with { Heater = Half(t.Heater!) }) with
        {
            Booster = p.Booster! with { Heater = Half(p.Booster.Heater) },
            Feed = p.Feed with { Band = p.Feed.Band / 2 },
        };
    }
}
