using CsCheck;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Tests.Water;

/// <summary>What must hold for every circuit and tank.</summary>
public sealed class HydraulicsLaws
{
    private static readonly Gen<SprayCircuit> Circuits = Gen.Select(Gen.Double[1e-3, 2e-2], Gen.Double[1e4, 1e5])
        .Select((q, p) => SprayCircuit.FromNominal(q, p));

    private static readonly Gen<SprayCondition> Conditions = Gen.Select(
            Gen.Double[0.3, 1],
            Gen.Double[0.2, 1],
            Gen.Double[1, 30],
            Gen.Double[0, 0.9],
            Gen.Double[0, 1e-3],
            Gen.Double[0.01, 1]
        )
        .Select((w, r, s, p, c, f) => new SprayCondition(w, r, s, p, c, f));

    [Fact]
    public void What_the_pump_moves_leaves_by_jets_and_cap() =>
        Gen.Select(Circuits, Conditions)
            .Sample((circuit, condition) => Near(circuit.At(condition).Total, circuit.At(condition).Spray + circuit.At(condition).Cap));

    [Fact]
    public void Every_harm_lowers_the_spray_and_only_plugging_raises_the_pressure() =>
        Gen.Select(Circuits, Conditions)
            .Sample(
                (circuit, c) =>
                {
                    var now = circuit.At(c);
                    var worn = circuit.At(c with { Wear = c.Wear * 0.9 });
                    var clogged = circuit.At(c with { Strainer = c.Strainer * 1.5 });
                    var opened = circuit.At(c with { CapOpening = c.CapOpening + 1e-4 });
                    var plugged = circuit.At(c with { Plugged = c.Plugged + 0.05 });
                    return worn.Spray < now.Spray
                        && worn.ArmPressure < now.ArmPressure
                        && clogged.Spray < now.Spray
                        && clogged.ArmPressure < now.ArmPressure
                        && opened.Spray < now.Spray
                        && opened.ArmPressure < now.ArmPressure
                        && opened.Total > now.Total
                        && plugged.Spray < now.Spray
                        && plugged.ArmPressure > now.ArmPressure;
                }
            );

    [Fact]
    public void More_pressure_never_lowers_the_rinse() =>
        Gen.Select(Gen.Double[0.01, 1], Gen.Double[1e4, 4e5], Gen.Double[1e4, 6e5], Gen.Double[0.2, 1], Gen.Double[1, 50], Gen.Double[1, 2])
            .Sample(
                (flow, regulator, supply, nozzles, strainer, more) =>
                {
                    var circuit = RinseCircuit.FromNominal(flow, 138000);
                    var now = circuit.At(regulator, supply, nozzles, strainer);
                    return circuit.At(regulator * more, supply, nozzles, strainer).Flow >= now.Flow
                        && circuit.At(regulator, supply * more, nozzles, strainer).Flow >= now.Flow
                        && circuit.At(regulator, supply, nozzles, strainer * more).Flow <= now.Flow
                        && now.Pressure <= Math.Min(regulator, supply);
                }
            );

    [Fact]
    public void Water_of_a_step_is_all_accounted_for() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 2], Gen.Double[0, 0.5], Gen.Double[0.05, 5], Gen.Double[20, 120])
            .Sample(
                (mass, gain, k, dt, full) =>
                {
                    var step = new Outlet(k).Step(mass, gain, full, dt);
                    return step.Mass >= 0
                        && step.Mass <= full
                        && step.Overflow >= -1e-12
                        && Math.Abs(step.Mass + (dt * (step.Leak + step.Overflow)) - mass - (dt * gain)) <= 1e-12 * (mass + full + 1);
                }
            );

    [Fact]
    public void The_level_that_holds_is_held() =>
        Gen.Select(Gen.Double[0.01, 1], Gen.Double[0.01, 0.5])
            .Sample(
                (inflow, k) =>
                {
                    var outlet = new Outlet(k);
                    var mass = outlet.MassHolding(inflow)!.Value;
                    return Near(mass, outlet.Step(mass, inflow, double.MaxValue, 10).Mass);
                }
            );

    [Fact]
    public void Taking_out_more_than_there_is_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Outlet(0.01).Step(1, -2, 10, 1));

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-10 * Math.Max(Math.Abs(a), Math.Abs(b));
}
