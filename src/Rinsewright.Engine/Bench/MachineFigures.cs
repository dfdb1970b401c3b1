using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Bench;

/// <summary>A figure of a tool that a machine's description knows.</summary>
/// <param name="Field">Field it answers.</param>
/// <param name="Value">What it is.</param>
/// <param name="Basis">Where it comes from; of a figure worked from several the weakest of theirs.</param>
public sealed record MachineFigure(string Field, Amount Value, Provenance Basis);

/// <summary>What a tool need not ask because the machine's description says it.</summary>
public static class MachineFigures
{
    /// <summary>Figures of the machine that the tool asks for, each inside the range of its field; a figure that is not, or that the machine has not, is left out.</summary>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public static IReadOnlyList<MachineFigure> For(BenchTool tool, Machine machine)
    {
        var known = new Known(machine);
        var found = new List<MachineFigure>();
        foreach (var field in tool.Fields)
        {
            if (known.Of(tool.Id, field.Id) is { } figure && BenchProblem.Of(field, figure.Value) is null)
            {
                found.Add(figure);
            }
        }

        return found;
    }

    /// <summary>Choices that the machine's description makes, by their id.</summary>
    public static IReadOnlyDictionary<string, string> Choices(BenchTool tool, Machine machine)
    {
        var made = new Dictionary<string, string>(StringComparer.Ordinal);
        var heater = machine.Booster?.Heater ?? Wash(machine).Heater;
        if (
            tool.Choices.Any(c => c.Id == "connection")
            && heater is { Kind: HeaterKind.Electric }
            && heater.Connection switch
            {
                Connection.Delta => "delta",
                Connection.Wye => "wye",
                Connection.WyeWithNeutral => "wye-neutral",
                _ => null,
            }
                is { } connection
        )
        {
            made["connection"] = connection;
        }

        return made;
    }

    internal static Tank Wash(Machine machine) => machine.Tanks.FirstOrDefault(t => t.Duty == TankDuty.Wash) ?? machine.Tanks[^1];

    private sealed class Known(Machine machine)
    {
        private readonly Tank wash = Wash(machine);
        private readonly FinalRinse? rinse = machine.FinalRinse;
        private readonly Booster? booster = machine.Booster;

        public MachineFigure? Of(string tool, string field) =>
            (tool, field) switch
            {
                ("fill-time", "ratedFlow") => Plain(field, wash.Fill?.Flow),
                (_, "ratedFlow") => Plain(field, rinse?.Flow),
                ("line-loss", "flow") => Plain(field, rinse?.Flow),
                (_, "flow") => Plain(field, rinse?.Flow),
                (_, "ratedPressure" or "flowPressure") => Plain(field, rinse?.Pressure),
                (_, "staticPressure") => Plain(field, machine.Supply.StaticPressure),
                (_, "rinseTime") => RinseTime(field),
                (_, "rinsePerRack") => PerRack(field, reachesTank: tool is not "rinse-additive"),
                (_, "cycleWater") => PerRack(field, reachesTank: false),
                (_, "tank") => Plain(field, wash.Capacity),
                (_, "surface") => Plain(field, wash.Surface),
                ("leak" or "drain-time", "depth") => new(
                    field,
                    (wash.Capacity.Value / wash.Surface.Value).In(Units.Inch),
                    Weaker(wash.Capacity.Basis, wash.Surface.Basis)
                ),
                ("heat-up", "ratedPower") => Plain(field, wash.Heater?.Rated),
                (_, "ratedPower") => Plain(field, (booster?.Heater ?? wash.Heater)?.Rated),
                (_, "ratedVoltage") => Plain(field, (booster?.Heater ?? wash.Heater)?.RatedVoltage),
                (_, "supplyVoltage") => Plain(field, machine.Supply.Voltage),
                (_, "wanted") => Plain(field, booster?.Thermostat.SetPoint),
                (_, "incoming" or "waterTemperature") => Plain(field, machine.Supply.Water),
                ("heat-up", "from") => Plain(field, machine.Supply.Water),
                ("heat-up", "to") => Plain(field, wash.Thermostat?.SetPoint),
                (_, "metal") => Plain(field, wash.Metal),
                (_, "lossPerKelvin") => Plain(field, wash.ShellLoss),
                (_, "room") => Plain(field, machine.Supply.Room),
                (_, "roomHumidity") => Plain(field, machine.Supply.Humidity),
                (_, "coil") => Plain(field, wash.Heater?.Coil),
                (_, "steam") => Plain(field, wash.Heater?.Steam),
                ("steam-coil", "water") or (_, "tankTemperature" or "hotTemperature") => field == "hotTemperature" && booster is not null
                    ? Plain(field, booster.Thermostat.SetPoint)
                    : Plain(field, wash.Thermostat?.SetPoint),
                (_, "strength") => Plain(field, Fed(FedProduct.Detergent)),
                (_, "target") => Plain(field, Fed(FedProduct.Sanitizer)),
                (_, "waterRise") => Rise(field),
                ("delime-interval", _) => Delimed(field),
                _ => null,
            };

        private static MachineFigure? Plain<T>(string field, Figure<T>? figure)
            where T : struct, IQuantity<T> => figure is { } f ? Plain(field, f) : null;

        private static MachineFigure Plain<T>(string field, Figure<T> figure)
            where T : struct, IQuantity<T> => new(field, figure.Written, figure.Basis);

        private static Provenance Weaker(Provenance a, Provenance b) => a > b ? a : b;

        private Figure<MassConcentration>? Fed(FedProduct product) =>
            machine.Feeders.Where(f => f.Product == product).Select(f => (Figure<MassConcentration>?)f.Strength).FirstOrDefault();

        private (double Seconds, Provenance Basis)? Rinsing() =>
            rinse is null ? null
            : machine.Cycle is { } cycle ? (cycle.Rinse.Value.InSecond, cycle.Rinse.Basis)
            : machine.Conveyor is { } conveyor ? (Duties.SecondsOfRinse(ModelParameters.From(machine)), conveyor.Speed.Basis)
            : null;

        private MachineFigure? RinseTime(string field) =>
            Rinsing() is { } r ? new MachineFigure(field, new Amount(r.Seconds, Units.Second), r.Basis) : null;

        // Delimings kept with the machine, the latest first; each took away what came since the one before.
        private MachineFigure? Delimed(string field)
        {
            if (field is not [.., var last and (>= '1' and <= '3')])
            {
                return null;
            }

            var kept = machine.SetUps.Where(s => s.Tool == "delime").OrderByDescending(s => s.On).ToList();
            var at = last - '1';
            if (at + 1 >= kept.Count || kept[at].On == kept[at + 1].On)
            {
                return null;
            }

            var amount = field.StartsWith("days", StringComparison.Ordinal)
                ? new Amount(kept[at].On.DayNumber - kept[at + 1].On.DayNumber, Units.Day)
                : kept[at].Given.Where(g => g.Key == "scaleMass").Select(g => (Amount?)g.Value).FirstOrDefault();
            return amount is { } value ? new MachineFigure(field, value, Provenance.Measured) : null;
        }

        // What a rack on its own takes, and of it what the last tank catches.
        private MachineFigure? PerRack(string field, bool reachesTank)
        {
            if (Rinsing() is not { } r || rinse is null)
            {
                return null;
            }

            var litres = rinse.Flow.Value.InLitrePerMinute / 60 * r.Seconds * (reachesTank ? rinse.Captured.Value.InFraction : 1);
            return new MachineFigure(field, Volume.FromLitre(litres).In(Units.Gallon), Weaker(rinse.Flow.Basis, r.Basis));
        }

        private MachineFigure? Rise(string field)
        {
            var end = booster?.Thermostat.SetPoint ?? wash.Thermostat?.SetPoint;
            return end is { } to && to.Value.InCelsius > machine.Supply.Water.Value.InCelsius
                ? new MachineFigure(
                    field,
                    new Amount(to.Value.InFahrenheit - machine.Supply.Water.Value.InFahrenheit, Units.FahrenheitDifference),
                    Weaker(to.Basis, machine.Supply.Water.Basis)
                )
                : null;
        }
    }
}
