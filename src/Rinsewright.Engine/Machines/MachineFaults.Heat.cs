using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

// Heaters, thermostats, gauges, booster, supply. Changes and ranges: engineering estimates, from memory; shares of power by connection are closed forms.
public static partial class MachineFaults
{
    private static MachineFault[] Heaters() =>
        [
            WashShare("tank-line-lost", "heater_phase", 0.5, 0.5, 0.5),
            WashShare("tank-element-open", "heater_element", 2.0 / 3, 0.5, 0.67),
            WashShare("tank-element-scaled", "heater_scaled", 0.8, 0.6, 1),
            WashShare("tank-contactor-failed", "heater_out", 0, 0, 0, setsInHot: true),
            new(
                "low-voltage",
                "low_voltage",
                new FaultScale(Units.One, 1, 208.0 * 208 / (240 * 240), 0.7, 0.95),
                HasHeater,
                (p, s) =>
                    BoosterHeater(
                        p.WithTanks(t => Heated(t, h => h with { Share = h.Share * Factor(208.0 * 208 / (240 * 240), s) })),
                        h => h with { Share = h.Share * Factor(208.0 * 208 / (240 * 240), s) }
                    )
            ),
            Sensor("tank-thermostat-low", "thermostat_low", 6, 2, 10),
            Sensor("tank-thermostat-high", "thermostat_high", -6, -10, -2),
            new(
                "wash-gauge-bad",
                "gauge_high",
                new FaultScale(Units.FahrenheitDifference, 0, 8, -15, 15),
                Any,
                (p, s) => Wash(p, t => t with { GaugeOffset = t.GaugeOffset + (s * 8 / 1.8) })
            ),
            new(
                "rinse-gauge-bad",
                "gauge_low",
                new FaultScale(Units.FahrenheitDifference, 0, -8, -15, 15),
                HasRinse,
                (p, s) => Rinse(p, r => r with { GaugeOffset = r.GaugeOffset - (s * 8 / 1.8) })
            ),
            new(
                "power-rinse-heat-failed",
                "rinse_heater_out",
                new FaultScale(Units.One, 1, 0, 0, 1),
                HasTanks,
                (p, s) => p.WithTank(p.Wash + 1, t => Heated(t, h => h with { Share = h.Share * Factor(0, s) })),
                setsInHot: true
            ),
            BoosterShare("booster-line-lost", "boost_phase", 0.5, 0.5, 0.5),
            BoosterShare("booster-element-failed", "boost_element", 2.0 / 3, 0.5, 0.67),
            BoosterShare("booster-outrun", "boost_small", 0.6, 0.4, 0.9),
            new(
                "booster-scaled",
                "boost_limed",
                new FaultScale(Units.One, 1, 0.75, 0.6, 1),
                HasBooster,
                (p, s) =>
                    Rinse(
                        BoosterHeater(p, h => h with { Share = h.Share * Factor(0.75, s) }),
                        r => r with { Nozzles = r.Nozzles * Factor(0.9, s) }
                    )
            ),
            new(
                "booster-thermostat-low",
                "boost_stat_low",
                new FaultScale(Units.CelsiusDifference, 0, 6, -10, 10),
                HasBooster,
                (p, s) => BoosterHeater(p, h => h with { SensorOffset = h.SensorOffset + (s * 6) })
            ),
            Supply("incoming-water-cold", "supply_120", 120, 100, 150),
            Supply("hot-water-shortage", "supply_100", 100, 60, 120),
        ];

    private static MachineFault WashShare(string id, string catalogue, double share, double least, double most, bool setsInHot = false) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.One, 1, share, least, most),
            HasHeater,
            (p, s) => WashHeater(p, h => h with { Share = h.Share * Factor(share, s) }),
            setsInHot
        );

    private static MachineFault BoosterShare(string id, string catalogue, double share, double least, double most) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.One, 1, share, least, most),
            HasBooster,
            (p, s) => BoosterHeater(p, h => h with { Share = h.Share * Factor(share, s) })
        );

    private static MachineFault Sensor(string id, string catalogue, double offset, double least, double most) =>
        new(
            id,
            catalogue,
            new FaultScale(Units.CelsiusDifference, 0, offset, least, most),
            HasHeater,
            (p, s) => WashHeater(p, h => h with { SensorOffset = h.SensorOffset + (s * offset) })
        );

    // Never warmer than it was.
    private static MachineFault Supply(string id, string catalogue, double fahrenheit, double least, double most)
    {
        var celsius = (fahrenheit - 32) / 1.8;
        return new MachineFault(
            id,
            catalogue,
            new FaultScale(Units.Fahrenheit, 140, fahrenheit, least, most),
            Any,
            (p, s) => p with { SupplyTemperature = Math.Min(p.SupplyTemperature, Toward(p.SupplyTemperature, celsius, s)) }
        );
    }
}
