using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

// Final rinse, travel of the ware, chemicals. Changes and ranges: engineering estimates, from memory.
public static partial class MachineFaults
{
    private const double PascalPerPsi = 6894.757293168361;

    private static MachineFault[] Rinses() =>
        [
            Regulator("rinse-pressure-set-low", "press_low", 8, 3, 15),
            Regulator("rinse-pressure-high", "press_high", 35, 25, 60),
            new(
                "rinse-regulator-open",
                "reg_failed",
                FaultScale.State,
                HasRinse,
                (p, s) => Rinse(p, r => r with { Regulator = s >= 1 ? double.PositiveInfinity : Toward(r.Regulator, r.Static, s) })
            ),
            new(
                "rinse-strainer-clogged",
                "line_strainer",
                new FaultScale(Units.One, 1, 35, 3, 200),
                HasRinse,
                (p, s) => Rinse(p, r => r with { Line = r.Line * Toward(1, 35, s) })
            ),
            new(
                "supply-pressure-low",
                "static_low",
                new FaultScale(Units.Psi, 50, 12, 5, 18),
                HasRinse,
                (p, s) => Rinse(p, r => r with { Static = Math.Min(r.Static, Toward(r.Static, 12 * PascalPerPsi, s)) })
            ),
            new(
                "rinse-jets-scaled",
                "rinse_noz",
                new FaultScale(Units.One, 1, 0.6, 0.3, 0.95),
                HasRinse,
                (p, s) => Rinse(p, r => r with { Nozzles = r.Nozzles * Factor(0.6, s) })
            ),
            new(
                "rinse-arm-wrong",
                "rinse_aim",
                new FaultScale(Units.One, 1, 0.4, 0.2, 0.8),
                HasRinse,
                (p, s) => Rinse(p, r => r with { Aim = r.Aim * Factor(0.4, s) })
            ),
            new(
                "rinse-valve-bleeds",
                "rinse_leak",
                new FaultScale(Units.One, 0, 0.08, 0.01, 0.15),
                HasRinse,
                (p, s) => Rinse(p, r => r with { Leak = r.Leak + (s * 0.08) })
            ),
            new(
                "rinse-switch-stuck-on",
                "rinse_stuck_on",
                FaultScale.State,
                HasRinse,
                (p, _) => Rinse(p, r => r with { Valve = Contact.On }),
                setsInHot: true
            ),
            new(
                "rinse-valve-closed",
                "rinse_dead",
                FaultScale.State,
                HasRinse,
                (p, _) => Rinse(p, r => r with { Valve = Contact.Off }),
                setsInHot: true
            ),
            new(
                "rinse-bypass-misset",
                "bypass_adj",
                new FaultScale(Units.One, 1, 0.3, 0, 0.8),
                HasRinse,
                (p, s) => Rinse(p, r => r with { Captured = r.Captured * Factor(0.3, s) })
            ),
        ];

    private static MachineFault[] Travels() =>
        [
            Speed("conveyor-too-fast", "conv_fast", 1.4, 1.1, 1.5, 1),
            Speed("conveyor-too-slow", "conv_slow", 0.7, 0.5, 0.9, 1),
            Speed("slip-clutch-loose", "conv_slip", 0.55, 0.3, 0.9, 1.5),
            new(
                "wash-time-short",
                "cycle_short",
                new FaultScale(Units.Second, 45, 22, 15, 40),
                HasDoor,
                (p, s) => Cycle(p, c => Shorter(c, c.Wash * s * 23 / 45, 0))
            ),
            new(
                "rinse-time-short",
                "rinse_short",
                new FaultScale(Units.Second, 11, 5, 4, 9),
                HasDoor,
                (p, s) => Cycle(p, c => Shorter(c, 0, c.Rinse * s * 6 / 11))
            ),
            new(
                "door-left-open",
                "door_open",
                new FaultScale(Units.Second, 8, 48, 15, 300),
                HasDoor,
                (p, s) => Cycle(p, c => c with { Load = c.Load + (s * 40) })
            ),
            new(
                "door-seal-leak",
                "door_gasket",
                new FaultScale(Units.One, 0, 0.0005, 0.0001, 0.002),
                HasDoor,
                (p, s) =>
                    Wash(
                        p,
                        t =>
                            t with
                            {
                                AirRunning = t.AirRunning * Toward(1, 1.5, s),
                                AirIdle = t.AirIdle * Toward(1, 1.5, s),
                                Pump = t.Pump with { ThrownOut = t.Pump.ThrownOut + (s * 0.0005) },
                            }
                    )
            ),
            new(
                "racks-overloaded",
                "overloaded",
                new FaultScale(Units.One, 1, 1.8, 1.3, 2),
                Any,
                (p, s) =>
                    WashPump(p, u => u with { Coverage = u.Coverage * Factor(0.7, s) }) with
                    {
                        Ware = p.Ware with
                        {
                            Pieces = p.Ware.Pieces * Toward(1, 1.8, s),
                            CarryOver = p.Ware.CarryOver * Toward(1, 5.0 / 3, s),
                        },
                    }
            ),
            new(
                "poor-prescrape",
                "not_scraped",
                new FaultScale(Units.One, 1, 6, 2, 10),
                Any,
                (p, s) => p with { Ware = p.Ware with { Soil = p.Ware.Soil * Toward(1, 6, s) } }
            ),
        ];

    // The crew keeps its pace: what the timer saves, the door stands open.
    private static CycleParameters Shorter(CycleParameters c, double wash, double rinse) =>
        c with
        {
            Wash = c.Wash - wash,
            Rinse = c.Rinse - rinse,
            Load = c.Load + wash + rinse,
        };

    private static MachineFault[] Chemicals() =>
        [
            new(
                "detergent-empty",
                "det_empty",
                FaultScale.State,
                Any,
                (p, _) => p with { Feed = p.Feed with { Rate = 0 } },
                setsInHot: true
            ),
            Probe("detergent-probe-fouled", "probe_fouled", 0.6, 0.3, 0.9),
            Probe("detergent-probe-high", "probe_high", 1.5, 1.1, 2),
            new(
                "detergent-overset",
                "det_overset",
                new FaultScale(Units.One, 1, 2, 1.3, 4),
                Any,
                (p, s) => p with { Feed = p.Feed with { Detergent = p.Feed.Detergent * Toward(1, 2, s) } }
            ),
            Additive("rinse-additive-empty", "add_out", 0, 0, 0),
            Additive("rinse-additive-overset", "add_over", 10.0 / 3, 1.5, 5),
        ];

    private static MachineFault Regulator(string id, string catalogue, double psi, double least, double most) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.Psi, 20, psi, least, most),
            HasRinse,
            (p, s) => Rinse(p, r => r with { Regulator = Math.Max(0, Toward(r.Regulator, psi * PascalPerPsi, s)) })
        );

    private static MachineFault Speed(string id, string catalogue, double factor, double least, double most, double slip) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.One, 1, factor, least, most),
            Conveys,
            (p, s) =>
                p with
                {
                    Travel = p.Travel with
                    {
                        SpeedFactor = p.Travel.SpeedFactor * Factor(factor, s),
                        Slip = p.Travel.Slip * Toward(1, slip, s),
                    },
                }
        );

    private static MachineFault Probe(string id, string catalogue, double factor, double least, double most) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.One, 1, factor, least, most),
            Any,
            (p, s) => p with { Feed = p.Feed with { Probe = p.Feed.Probe * Factor(factor, s) } }
        );

    private static MachineFault Additive(string id, string catalogue, double factor, double least, double most) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.One, 1, factor, least, most),
            Any,
            (p, s) => p with { Feed = p.Feed with { Additive = p.Feed.Additive * Factor(factor, s) } }
        );
}
