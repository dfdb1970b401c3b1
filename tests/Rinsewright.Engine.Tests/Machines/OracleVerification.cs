using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>
/// The stepping against the same equations integrated by a general-purpose stiff solver (SciPy's LSODA at tight tolerance; <c>tests/oracle/machine_model.py</c>, table and versions in
/// <c>oracle.csv</c>): heat-up, cooling, dilution and a two-tank cascade under load, within 0.02 K.
/// </summary>
public sealed class OracleVerification
{
    private const double Kelvin = 0.02;

    [Fact]
    public void Heat_up() => Compare("heat-up", Alone(18000), 60, 0.5);

    [Fact]
    public void Cooling() => Compare("cooling", Alone(0), 70, 5);

    [Fact]
    public void Dilution()
    {
        var p = Running() with { AirFactor = 0 };
        var simulation = FullAt(p, 60, 60);
        simulation.Dissolve(0, Solute.Detergent, 1.5e-3 * p.Tanks[0].Full);
        Assert.All(
            Cases("dilution"),
            row =>
            {
                Go(simulation, row.Number("seconds"), 0.1, 0);
                Relative.Equal(row.Number("wash"), 1000 * simulation.Share(0, Solute.Detergent), 1e-3);
                Relative.Equal(row.Number("rinse"), 1000 * simulation.Share(1, Solute.Detergent), 1e-3);
            }
        );
    }

    [Fact]
    public void Cascade_under_load()
    {
        var p = Running().WithTank(0, t => t with { Heater = t.Heater! with { SetPoint = 200 } });
        var simulation = FullAt(p, 66, 74);
        Assert.All(
            Cases("load"),
            row =>
            {
                Go(simulation, row.Number("seconds"), 0.1, 24);
                Assert.Equal(row.Number("wash"), simulation.Tanks[0].Celsius, Kelvin);
                Assert.Equal(row.Number("rinse"), simulation.Tanks[1].Celsius, Kelvin);
            }
        );
        Assert.True(simulation.Tanks[0].Celsius > 73);
    }

    private static void Compare(string name, ModelParameters p, double start, double dt)
    {
        var simulation = FullAt(p, start, start);
        Assert.All(
            Cases(name),
            row =>
            {
                Go(simulation, row.Number("seconds"), dt, 0);
                Assert.Equal(row.Number("wash"), simulation.Tanks[0].Celsius, Kelvin);
            }
        );
    }

    private static List<Dictionary<string, string>> Cases(string name) =>
        [.. Published.Rows("Machines", "oracle.csv").Where(r => r["case"] == name)];

    // One heater or none, nothing filled.
    private static ModelParameters Alone(double watt) =>
        Typicals.TwoTank.WithTanks(t =>
            t with
            {
                FillFlow = 0,
                LowWater = 0,
                Heater = watt > 0 ? t.Heater! with { Power = watt, SetPoint = 200 } : null,
            }
        );

    // Pumps and rinse always on, rinse at 85 °C, rinse tank unheated, wash tank as it is asked.
    private static ModelParameters Running()
    {
        var p = Typicals.TwoTank.WithTanks(t => t with { FillFlow = 0, Pump = t.Pump with { Switch = Contact.On } });
        return p.WithTank(1, t => t with { Heater = null }) with
        {
            Rinse = p.Rinse! with { Valve = Contact.On },
            Booster = null,
            SupplyTemperature = 85,
            Feed = p.Feed with { Rate = 0 },
        };
    }

    private static Simulation FullAt(ModelParameters p, double wash, double rinse)
    {
        var start = new SteadySolution(2) { Booster = p.SupplyTemperature };
        for (var i = 0; i < 2; i++)
        {
            start.Tanks[i].Mass = p.Tanks[i].Full;
            start.Tanks[i].Celsius = i == 0 ? wash : rinse;
        }

        var simulation = new Simulation(p);
        simulation.Settle(start);
        return simulation;
    }

    private static void Go(Simulation simulation, double until, double dt, double interval)
    {
        while (simulation.Time < until - 1e-6)
        {
            var beats = interval > 0 ? simulation.Time / interval : 0.5;
            if (Math.Abs(beats - Math.Round(beats)) < 1e-6)
            {
                simulation.Load();
            }

            simulation.Step(dt);
        }
    }
}
