using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

// Tanks, fill and drain; sprays and curtains. Changes and ranges: engineering estimates, from memory.
public static partial class MachineFaults
{
    private const double KilogramPerSecondPerGallonPerMinute = 3.785411784e-3 / 60 * Engine.Water.LiquidWater.Density;

    private static MachineFault[] Water() =>
        [
            Drain("drain-seal-missing", "drain_oring_missing", 6e-5, 3e-5, 1.2e-4),
            Drain("standpipe-seal-worn", "drain_oring_torn", 1.2e-5, 2e-6, 3e-5),
            Drain("drain-jammed", "drain_jammed", 4.5e-4, 1e-4, 1e-3),
            new(
                "fill-float-stuck-up",
                "float_full",
                FaultScale.State,
                HasFill,
                (p, _) => Wash(p, t => t with { Float = Contact.Off }),
                setsInHot: true
            ),
            new(
                "fill-float-stuck-down",
                "float_empty",
                FaultScale.State,
                HasFill,
                (p, _) => Wash(p, t => t with { Float = Contact.On }),
                setsInHot: true
            ),
            new(
                "fill-valve-bleeds",
                "fill_leak",
                new FaultScale(Units.GallonPerMinute, 0, 0.5, 0.02, 2),
                HasFill,
                (p, s) => Wash(p, t => t with { FillLeak = t.FillLeak + (s * 0.5 * KilogramPerSecondPerGallonPerMinute) })
            ),
            new(
                "fill-strainer-clogged",
                "fill_clog",
                new FaultScale(Units.One, 1, 0.3, 0.1, 0.8),
                HasFill,
                (p, s) => p.WithTanks(t => t with { FillFlow = t.FillFlow * Factor(0.3, s) })
            ),
        ];

    private static MachineFault[] Sprays() =>
        [
            new(
                "intake-strainer-clogged",
                "strainer_clog",
                new FaultScale(Units.One, 1, 8, 2, 20),
                Any,
                (p, s) => WashPump(p, u => u with { Condition = u.Condition with { Strainer = u.Condition.Strainer * Toward(1, 8, s) } })
            ),
            new(
                "scrap-tray-overloaded",
                "scrap_full",
                new FaultScale(Units.One, 1, 3, 2, 6),
                Any,
                (p, s) =>
                    WashPump(p, u => u with { Condition = u.Condition with { Strainer = u.Condition.Strainer * Toward(1, 3, s) } }) with
                    {
                        Ware = p.Ware with { Soil = p.Ware.Soil * Toward(1, 2, s) },
                    }
            ),
            new(
                "wash-endcap-missing",
                "cap_open",
                new FaultScale(Units.SquareMetre, 0, 3.3e-4, 2e-4, 5e-4),
                Any,
                (p, s) => WashPump(p, u => u with { Condition = u.Condition with { CapOpening = s * 3.3e-4 }, OpenEndOut = 0.03 })
            ),
            new(
                "wash-jets-clogged",
                "jets_plugged",
                new FaultScale(Units.One, 0, 0.3, 0.05, 0.6),
                Any,
                (p, s) => WashPump(p, u => u with { Condition = u.Condition with { Plugged = s * 0.3 } })
            ),
            new(
                "wash-arm-not-latched",
                "arm_unlatched",
                new FaultScale(Units.One, 1, 0.4, 0.2, 0.7),
                Any,
                (p, s) => WashPump(p, u => u with { Coverage = u.Coverage * Factor(0.4, s), ThrownOut = u.ThrownOut + (s * 0.0008) })
            ),
            Curtain("curtain-missing", "curtain_mid", 0.02, 0.005, 0.04),
            Curtain("curtain-wrong-order", "curtain_mis", 0.006, 0.001, 0.01),
            new(
                "curtain-end-missing",
                "curtain_end",
                new FaultScale(Units.One, 1, 1.8, 1.3, 2.5),
                Conveys,
                (p, s) =>
                    Wash(
                        p,
                        t =>
                            t with
                            {
                                AirRunning = t.AirRunning * Toward(1, 1.8, s),
                                AirIdle = t.AirIdle * Toward(1, 1.8, s),
                                Pump = t.Pump with { ThrownOut = t.Pump.ThrownOut + (s * 0.0005) },
                            }
                    )
            ),
            new(
                "impeller-worn",
                "impeller_worn",
                new FaultScale(Units.One, 1, 0.75, 0.6, 0.95),
                Any,
                (p, s) => WashPump(p, u => u with { Condition = u.Condition with { Wear = u.Condition.Wear * Factor(0.75, s) } })
            ),
            new(
                "pump-reversed",
                "pump_reversed",
                new FaultScale(Units.One, 1, 0.35, 0.2, 0.5),
                Any,
                (p, s) => WashPump(p, u => u with { Condition = u.Condition with { Direction = Factor(0.35, s) } })
            ),
            new(
                "pump-motor-failed",
                "pump_dead",
                FaultScale.State,
                Any,
                (p, _) => WashPump(p, u => u with { Condition = u.Condition with { Wear = 0 } })
            ),
            new(
                "wash-switch-held-on",
                "wash_stuck_on",
                FaultScale.State,
                Any,
                (p, _) => p.WithTanks(t => t with { Pump = t.Pump with { Switch = Contact.On } }),
                setsInHot: true
            ),
            new(
                "deflector-flap-off",
                "deflector_open",
                new FaultScale(Units.One, 0, 0.02, 0.002, 0.05),
                Conveys,
                (p, s) => WashPump(p, u => u with { ToDrain = u.ToDrain + (s * 0.02) })
            ),
            new(
                "vent-poor",
                "vent_off",
                new FaultScale(Units.One, 1, 0.5, 0.2, 0.7),
                Any,
                (p, s) => p with { AirFactor = p.AirFactor * Factor(0.5, s) }
            ),
            new(
                "vent-overdrawing",
                "vent_over",
                new FaultScale(Units.One, 1, 2.5, 1.5, 4),
                Any,
                (p, s) =>
                    p with
                    {
                        AirFactor = p.AirFactor * Toward(1, 2.5, s),
                        GapTransfer = p.GapTransfer * Toward(1, 2, s),
                        RoomTransfer = p.RoomTransfer * Toward(1, 1.75, s),
                    }
            ),
        ];

    private static MachineFault Drain(string id, string catalogue, double opening, double least, double most) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.SquareMetre, 0, opening, least, most),
            Any,
            (p, s) => Wash(p, t => t with { Leak = t.Leak + (s * opening) })
        );

    private static MachineFault Curtain(string id, string catalogue, double cross, double least, double most) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.One, 0.0005, cross, least, most),
            HasTanks,
            (p, s) => WashPump(p, u => u with { Cross = Math.Max(u.Cross, Toward(u.Cross, cross, s)) })
        );
}
